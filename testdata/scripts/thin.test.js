import assert from 'node:assert/strict'
import { test } from 'node:test'
import { thin } from './thin'

test('a line is thin that the browser calls so, or whose reader saves data', () => {
  for (const effectiveType of ['slow-2g', '2g', '3g']) assert.equal(thin({ effectiveType, saveData: false }), true)
  assert.equal(thin({ effectiveType: '4g', saveData: true }), true)
  assert.equal(thin({ saveData: true }), true)
})

test('a line of which the browser says nothing is not thin', () => {
  assert.equal(thin({ effectiveType: '4g', saveData: false }), false)
  assert.equal(thin({}), false)
})
