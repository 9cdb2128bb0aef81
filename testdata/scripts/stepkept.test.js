import assert from 'node:assert/strict'
import { beforeEach, test } from 'node:test'
import { keepPlace, recallPlace } from './stepkept'

const stored = new Map()
const storage = {
  getItem: (key) => stored.get(key) ?? null,
  setItem: (key, text) => void stored.set(key, text),
  removeItem: (key) => void stored.delete(key),
}
const key = 'slipbook.steps.1:/mixing/make-slip.html'
const timer = { step: 'b', seconds: 120, end: 1_700_000_000_000, said: false }
const whole = { at: 'b', open: true, ticks: ['a'], timers: [timer], sound: false }

beforeEach(() => {
  stored.clear()
  globalThis.localStorage = storage
  globalThis.location = { pathname: '/mixing/make-slip.html' }
})

test('a place comes back, for its lesson alone', () => {
  keepPlace(whole)
  assert.deepEqual([...stored.keys()], [key])
  assert.deepEqual(recallPlace(), whole)
  globalThis.location = { pathname: '/mixing/other.html' }
  assert.equal(recallPlace(), undefined)
  globalThis.location = { pathname: '/mixing/make-slip.html' }
  keepPlace(undefined)
  assert.equal(stored.size, 0)
})

test('what is not whole is dropped', () => {
  for (const text of ['', 'null', '1', '[]', '{', JSON.stringify({ ...whole, at: 3 }), JSON.stringify({ ...whole, open: 1 }), JSON.stringify({ ...whole, ticks: [1] }),
    JSON.stringify({ ...whole, timers: [{ ...timer, end: 'x' }] }), JSON.stringify({ ...whole, timers: [{ ...timer, seconds: 0 }] }), JSON.stringify({ ...whole, timers: [null] }),
    JSON.stringify({ ...whole, sound: undefined })]) {
    stored.set(key, text)
    assert.equal(recallPlace(), undefined, text)
    assert.equal(stored.has(key), false, text)
  }
})

test('a browser that keeps nothing does no harm', () => {
  globalThis.localStorage = { getItem: () => { throw new Error('no') }, setItem: () => { throw new Error('no') }, removeItem: () => { throw new Error('no') } }
  keepPlace(whole)
  assert.equal(recallPlace(), undefined)
})
