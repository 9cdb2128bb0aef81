import assert from 'node:assert/strict'
import { test } from 'node:test'
import { spotOf } from './place'

test('a spot is read back', () => {
  assert.deepEqual(spotOf('{"n":3,"top":-12.5}'), { n: 3, top: -12.5 })
})

for (const text of [null, '', 'x', 'null', '3', '[]', '{}', '{"n":"3","top":0}', '{"n":1.5,"top":0}', '{"n":-1,"top":0}', '{"n":3}', '{"n":3,"top":null}', '{"n":3,"top":"0"}', '{"n":1e300,"top":0}', '{"n":3,"top":1e999}']) {
  test(`anything else is none: ${text}`, () => assert.equal(spotOf(text), undefined))
}
