import assert from 'node:assert/strict'
import { beforeEach, test } from 'node:test'
import { choice, choose } from './choice'

const stored = new Map()
const root = new URL('https://clay.example/a/b/')

beforeEach(() => {
  stored.clear()
  globalThis.localStorage = { getItem: (key) => stored.get(key) ?? null, setItem: (key, text) => void stored.set(key, text) }
})

test('a choice holds for its handbook alone', () => {
  assert.equal(choice(root), null)
  choose(root, 'no')
  assert.equal(choice(root), 'no')
  assert.equal(choice(new URL('https://clay.example/a/')), null)
  choose(root, 'yes')
  assert.equal(choice(root), 'yes')
})

test('a browser that keeps no note has none', () => {
  const refuse = () => { throw new Error('denied') }
  globalThis.localStorage = { getItem: refuse, setItem: refuse }
  choose(root, 'no')
  assert.equal(choice(root), null)
})
