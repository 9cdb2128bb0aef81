import assert from 'node:assert/strict'
import { test } from 'node:test'
import { groups } from './stepgroups'

/** shown gives, for each step of a page in short, what stands with it: a letter each. */
function shown(page) {
  const kinds = { p: 'part', s: 'step', c: 'caution', t: 'tool', w: 'words', a: 'aside' }
  const letters = [...page.replace(/[^a-z]/gi, '')]
  const all = groups(letters.map((letter) => kinds[letter.toLowerCase()]))
  const at = (places) => places.map((n) => letters[n] + n).join(' ')
  return all.map((group) => [at(group.shown), at(group.held), at(group.tools)].join('|'))
}

test('a caution stands with the step that it guards, and its headline with those after it', () => {
  assert.deepEqual(shown('p s c s s'), ['p0 s1||', 'p0 c2 s3||', 'p0 s4|c2|'])
})

test('a caution at the top of a part is whole at its first step', () => {
  assert.deepEqual(shown('p c s s p s'), ['p0 c1 s2||', 'p0 s3|c1|', 'p4 s5||'])
})

test('no caution before a step is lost, in whichever part it stands', () => {
  assert.deepEqual(shown('c w p c w s'), ['p2 c0 c3 w4 s5||'])
  assert.deepEqual(shown('p s p c w a p s s'), ['p0 s1||', 'p6 c3 s7||', 'p6 s8|c3|'])
  // Every caution is whole at some step, wherever it stands before one.
  for (const page of ['cs', 'wcs', 'pcwps', 'pcpcpcs', 'psascs', 'ptcscts', 'pscwcps']) {
    const whole = new Set(groups([...page].map((letter) => ({ p: 'part', s: 'step', c: 'caution', t: 'tool', w: 'words', a: 'aside' })[letter])).flatMap((group) => [...group.shown, ...group.tools]))
    for (const [n, letter] of [...page].entries()) if (letter === 'c') assert.ok(whole.has(n), `${page}: the caution at ${n}`)
  }
})

test('what stands between steps comes with the next, what follows the last of a part with that', () => {
  assert.deepEqual(shown('p w s w s w w p w s'), ['p0 w1 s2||', 'p0 w3 s4 w5 w6||', 'p7 w8 s9||'])
})

test('of a part without steps only cautions and tools go on', () => {
  assert.deepEqual(shown('p w t c w p s s p w'), ['p5 c3 s6||t2', 'p5 s7|c3|t2'])
})

test('tools before the first step and after the last are there at all steps of the part, others at theirs', () => {
  assert.deepEqual(shown('p t s t s p s'), ['p0 s2||t1', 'p0 t3 s4||t1', 'p5 s6||'])
  assert.deepEqual(shown('p s s w t w p s'), ['p0 s1||t4', 'p0 s2 w3 w5||t4', 'p6 s7||'])
})

test('a caution of a tool goes where the tool goes', () => {
  assert.deepEqual(shown('p s s c w t c w'), ['p0 s1||c3 t5', 'p0 s2 w4 c6 w7||c3 t5'])
})

test('asides are left out', () => {
  assert.deepEqual(shown('p a s a s a'), ['p0 s2||', 'p0 s4||'])
})
