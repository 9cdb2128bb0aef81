import assert from 'node:assert/strict'
import { beforeEach, test } from 'node:test'
import { keep, recall } from './kept'

const stored = new Map()
const storage = {
  getItem: (key) => stored.get(key) ?? null,
  setItem: (key, text) => void stored.set(key, text),
  removeItem: (key) => void stored.delete(key),
}
const key = 'slipbook.bench.1:/slip/weigh.html#density'
const whole = { request: 'calculator=slip-density&mass=1', bench: true, at: 2, sheet: false, ticks: ['Water 150 g'] }

globalThis.location = { pathname: '/slip/weigh.html' }

beforeEach(() => {
  stored.clear()
  globalThis.localStorage = storage
})

test('what is kept comes back, for its page and part alone', () => {
  keep('density', whole)
  assert.deepEqual([...stored.keys()], [key])
  assert.deepEqual(recall('density'), whole)
  assert.equal(recall('adjust'), undefined)
  keep('density', undefined)
  assert.equal(stored.size, 0)
})

const poison = [
  '', 'x', '{', 'null', '3', '"text"', '[]', '{}', 'true',
  ...[
    { at: 'x' }, { at: null }, { at: 1.5 }, { at: -1 }, { at: 1e300 }, { at: undefined }, { at: [1] },
    { request: 3 }, { request: null }, { bench: 'yes' }, { sheet: 1 }, { ticks: 'a' }, { ticks: [1] }, { ticks: { length: 1 } }, { ticks: undefined },
  ].map((wrong) => JSON.stringify({ ...whole, ...wrong })),
]
for (const text of poison) {
  test(`what does not hold is dropped: ${text}`, () => {
    stored.set(key, text)
    assert.equal(recall('density'), undefined)
    assert.equal(stored.has(key), false)
  })
}

test('a browser that keeps nothing does no harm', () => {
  const refuse = () => {
    throw new Error('denied')
  }
  globalThis.localStorage = { getItem: refuse, setItem: refuse, removeItem: refuse }
  assert.equal(recall('density'), undefined)
  keep('density', whole)
  keep('density', undefined)
})
