import assert from 'node:assert/strict'
import { test } from 'node:test'
import { fold, near, stem, wordsOf } from './fold'

const rules = { passed: [], endings: [['ings', 'ing', 'ed', 'es', 's'], ['e', 'y', 'i']] }

// The cases of generator/press/find/find_test.go.
for (const [group, want] of [
  ['glaze glazes glazed glazing Glazing', 'glaz'],
  ['slip slips slipped slipping', 'slip'],
  ['dry dries dried drying', 'dr'],
  ['body bodies', 'bod'],
  ['glass glasses', 'glas'],
  ['crack cracks cracked cracking', 'crack'],
  ['engobé ENGOBE engobes', 'engob'],
  ['red', 'red'],
  ['speed', 'sped'],
  ['1,45 1.45', '1.45'],
]) {
  test(`words are made alike: ${group}`, () => assert.deepEqual([...new Set(group.split(' ').map((word) => stem(fold(word), rules)))], [want]))
}

test('words are parted', () => {
  assert.deepEqual(wordsOf(fold('What’s “bone-dry” at cone6? Don\'t ask 1.45.')), ['whats', 'bone', 'dry', 'at', 'cone', '6', 'dont', 'ask', '1.45'])
})

/** distance counts the least letters put in, left out, changed or swapped with their neighbour, each place once. */
function distance(a, b) {
  const d = Array.from({ length: a.length + 1 }, (_, i) => Array.from({ length: b.length + 1 }, (_, j) => (i === 0 ? j : j === 0 ? i : 0)))
  for (let i = 1; i <= a.length; i++) {
    for (let j = 1; j <= b.length; j++) {
      d[i][j] = Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1)
    }
  }
  return d[a.length][b.length]
}

test('one mistyped letter is what the distance says, on random words', () => {
  let seed = 7
  const chance = (n) => (seed = (seed * 48271) % 2147483647) % n
  const random = () => Array.from({ length: 1 + chance(6) }, () => 'abc'[chance(3)]).join('')
  let yes = 0
  for (let n = 0; n < 40000; n++) {
    const [a, b] = [random(), random()]
    const want = distance(a, b) <= 1
    yes += want
    assert.equal(near(a, b, false), want, `${a} ${b}`)
    const begins = Array.from({ length: b.length + 1 }, (_, k) => b.slice(0, k)).some((begin) => distance(a, begin) <= 1)
    assert.equal(near(a, b, true), begins, `${a} begins ${b}`)
  }
  assert.ok(yes > 2000, `${yes} pairs are near`)
})
