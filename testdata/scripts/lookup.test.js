import assert from 'node:assert/strict'
import { test } from 'node:test'
import { Lookup, slug, unfronted, unpacked } from './lookup'

const rules = { passed: ['how', 'why', 'my', 'is', 'it'], endings: [['ings', 'ing', 'ed', 'es', 's'], ['e', 'y', 'i']] }

/** An index of a few places: what stands where, by stem, as pairs of place and field. */
const where = {
  bon: [[0, 2]], crack: [[1, 3], [4, 0]], crawl: [[4, 6]], dr: [[0, 2], [3, 0]], glaz: [[1, 0], [2, 1], [3, 2], [4, 0], [5, 0]],
  inlai: [[5, 1]], leather: [[4, 0]], hard: [[4, 0]], red: [[3, 2]], sgrafito: [[5, 0]], underglaz: [[5, 6]],
}
const terms = Object.keys(where).sort()
const places = ['Bone dry\t\t\tglossary.html#bone-dry\tNo water.', 'It cracks\t\t\tfaults.html#cracks\tA crack.', 'Glaze\t\t\tglossary.html#glaze\tA glass.',
  'Red glaze\t\t2.1\ta/red.html\tOf red.', '\tWhy it crawls\t\t\tIt did.', '\tInlay\t\tinlay-2\tLines.']

/** list packs where a stem stands. */
function list(pairs) {
  const bytes = [pairs.length]
  let before = 0
  for (const [place, field] of pairs) {
    bytes.push(place - before << 3 | field)
    before = place
  }
  return bytes
}

/** fronted front-codes words. */
function fronted(words) {
  let before = ''
  return words.map((word) => {
    let n = 0
    while (n < word.length && word[n] === before[n]) n++
    before = word
    return `${String.fromCharCode(0x30 + n)}${word.slice(n)}\n`
  }).join('')
}

const files = {
  'words-1': new Uint8Array(terms.slice(0, 5).flatMap((term) => list(where[term]))).buffer,
  'words-2': new Uint8Array(terms.slice(5).flatMap((term) => list(where[term]))).buffer,
  places: new TextEncoder().encode(places.join('\n') + '\n').buffer,
}
let taken = []
const head = {
  ...rules, count: places.length, words: fronted(terms), parts: [[3, 2]],
  kinds: [{ name: 'word', weight: 1.1, count: 3 }, { name: 'lesson', weight: 1, count: 3 }],
  lists: [{ first: 0, packed: 'words-1', carried: '' }, { first: 5, packed: 'words-2', carried: '' }],
  places: [{ first: 0, packed: 'places', carried: '' }],
}
const lookup = () => {
  taken = []
  return new Lookup(head, ({ packed }) => {
    taken.push(packed)
    return Promise.resolve(files[packed])
  })
}
const found = async (typed) => (await lookup().find(typed)).places

test('words are read as they were packed', () => {
  assert.deepEqual(unfronted(fronted(terms)), terms)
  assert.deepEqual(unpacked(new Uint8Array([2, 9, 0x80 | 0x10, 0x7d, 0])).map((l) => [...l]), [[9, 2003 << 3], []])
})

test('a name stands before a text, the whole name before a part of one', async () => {
  assert.deepEqual((await found('glaze ')).slice(0, 2), [2, 3])
})

test('what has all words stands before what has some', async () => {
  assert.equal((await found('why is my glaze cracking '))[0], 1)
  assert.equal((await found('red glaze '))[0], 3)
})

for (const [typed, first] of [['glaez ', 2], ['galze ', 2], ['bnoe dry', 0], ['bonedry', 0], ['scrafito', 5], ['under glaze ', 5], ['crawli', 4], ['crawler', 4], ['leatherhard', 4], ['gl', 2], ['GLÁZE', 2]]) {
  test(`forgives: ${typed}`, async () => assert.equal((await found(typed))[0], first))
}

for (const typed of ['', ' ', 'why is it', 'zzzz', '?!', 'x']) {
  test(`finds nothing for “${typed}”`, async () => assert.deepEqual(await found(typed), []))
}

test('no more of the index is read than the words want', async () => {
  await found('bone ')
  assert.deepEqual(taken, ['words-1'])
  await found('glaze red ')
  assert.deepEqual(taken.sort(), ['words-1', 'words-2'])
})

test('of a page and its parts two are shown', async () => {
  const all = await found('glaze ')
  assert.equal(all.filter((n) => n >= 3).length, 2)
})

test('a part has the address of its page and the id of its heading', async () => {
  const l = lookup()
  assert.deepEqual(await l.place(4), { name: 'Red glaze', part: 'Why it crawls', number: '2.1', address: 'a/red.html#why-it-crawls', line: 'It did.', kind: 'lesson' })
  assert.equal((await l.place(5)).address, 'a/red.html#inlay-2')
  assert.deepEqual(await l.place(0), { name: 'Bone dry', part: '', number: '', address: 'glossary.html#bone-dry', line: 'No water.', kind: 'word' })
  assert.equal(slug('What’s “new” – 2 Öfen?'), 'whats-new-2-öfen')
})
