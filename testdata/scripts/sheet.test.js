import assert from 'node:assert/strict'
import { test } from 'node:test'
import { grouped } from './sheet'

test('digits stand in threes from five on', () => {
  for (const [number, mark, want] of [
    ['7', '.', '7'], ['1234', '.', '1234'], ['12345', '.', '12\u202f345'], ['123456', '.', '123\u202f456'], ['1234567', '.', '1\u202f234\u202f567'],
    ['1234.5', '.', '1234.5'], ['12345.25', '.', '12\u202f345.25'], ['12345.12345', ',', '12\u202f345,12345'], ['0.50', ',', '0,50'],
  ]) {
    assert.equal(grouped(number, mark), want)
  }
})
