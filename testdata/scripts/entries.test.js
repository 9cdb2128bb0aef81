import assert from 'node:assert/strict'
import { test } from 'node:test'
import { Entries, rulesOf } from './entries'

const rules = rulesOf('how it is the', 'ings ing ed es s | e y i')
const page = [
  { name: 'Streaks and thin stripes', text: 'Streaks and thin stripes. The glaze is thin.' },
  { name: 'It crawls', text: 'It crawls. The underglaze lay thick and streaked.' },
  { name: 'Frit', text: 'Frit. A melted glass.' },
  { name: 'Sgraffito', text: 'Sgraffito. Scratching through slip.' },
]
const found = (typed) => new Entries(page, rules).find(typed)

test('rules are read as the theme has them', () => {
  assert.deepEqual(rulesOf(' a  b ', 's es | y'), { passed: ['a', 'b'], endings: [['s', 'es'], ['y']] })
  assert.deepEqual(rulesOf(), { passed: [], endings: [[]] })
})

for (const [typed, named, told] of [
  ['streaks ', [0], [1]],
  ['STREAK', [0], [1]],
  ['streka ', [0], [1]],
  ['strekas', [0], [1]],
  ['thin streaks ', [0], []],
  ['how is the glass ', [], [2]],
  ['fr', [2], []],
  ['scrafito', [3], []],
  ['under glaze ', [], [1]],
  ['thick frit ', [], []],
  ['zzyzx', [], []],
]) {
  test(`“${typed}” leaves ${named} by name and ${told} by their words`, () => assert.deepEqual(found(typed), { named, told }))
}

for (const typed of ['', '  ', 'how is it', '?!']) {
  test(`“${typed}” leaves all`, () => assert.equal(found(typed), undefined))
}
