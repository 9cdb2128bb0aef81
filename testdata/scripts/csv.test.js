import assert from 'node:assert/strict'
import { test } from 'node:test'
import { csv, plain } from './csv'

test('fields that need it stand in quotes', () => {
  assert.equal(csv([['a', 'b c'], ['1,5', 'say "wet"'], ['two\nlines', '\r']]), 'a,b c\r\n"1,5","say ""wet"""\r\n"two\nlines","\r"\r\n')
})

test('nothing is nothing, and an empty field is empty', () => {
  assert.equal(csv([]), '')
  assert.equal(csv([['', '']]), ',\r\n')
})

test('numbers are such as a spreadsheet reads', () => {
  for (const [set, want] of [['12\u202f345', '12345'], ['1\u202f234\u202f567.5', '1234567.5'], ['\u22123.2', '-3.2'], ['1.45', '1.45'], ['a\u202fb', 'a\u202fb'], ['5 \u2212 3', '5 \u2212 3']]) {
    assert.equal(plain(set), want)
  }
})
