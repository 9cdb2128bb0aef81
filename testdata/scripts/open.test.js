import assert from 'node:assert/strict'
import { test } from 'node:test'
import { openWork } from './open'

const sheet = { request: 'calculator=wash-mix', bench: false, at: 0, sheet: true, ticks: [], name: 'Mix a stain wash' }
const place = { at: 'b', open: true, ticks: ['a'], timers: [], sound: false, name: 'Make a slip', number: 5 }
const timer = { step: 'b', seconds: 60, end: 1_700_000_000_000, said: false }
const bench = (path) => `slipbook.bench.1:${path}`
const steps = (path) => `slipbook.steps.1:${path}`
const found = (...kept) => openWork(kept.map(([key, value]) => [key, typeof value === 'string' ? value : JSON.stringify(value)]), '/a/')

test('a sheet and a lesson that are open are found, sheets first', () => {
  assert.deepEqual(found([steps('/a/mixing/make-slip.html'), place], [bench('/a/calculators/wash-mix.html#wash-mix'), sheet]), [
    { name: 'Mix a stain wash', address: '/a/calculators/wash-mix.html#wash-mix', step: 0 },
    { name: 'Make a slip', address: '/a/mixing/make-slip.html', step: 5 },
  ])
})

test('a lesson whose timer runs is open', () => {
  assert.equal(found([steps('/a/x.html'), { ...place, open: false, timers: [timer] }]).length, 1)
  assert.deepEqual(found([steps('/a/x.html'), { ...place, open: false, timers: [{ ...timer, said: true }] }]), [])
})

for (const [what, key, value] of [
  ['another handbook’s', bench('/b/x.html#x'), sheet],
  ['another program’s', 'other:/a/x.html#x', sheet],
  ['a sheet put away', bench('/a/x.html#x'), { ...sheet, sheet: false }],
  ['a sheet without a name', bench('/a/x.html#x'), { ...sheet, name: undefined }],
  ['a name that is none', bench('/a/x.html#x'), { ...sheet, name: 3 }],
  ['what is no memory', bench('/a/x.html#x'), '{'],
  ['a lesson that was left', steps('/a/x.html'), { ...place, open: false }],
  ['a lesson without a number', steps('/a/x.html'), { ...place, number: undefined }],
  ['a number that is none', steps('/a/x.html'), { ...place, number: 'x' }],
]) {
  test(`${what} is not told of`, () => assert.deepEqual(found([key, value]), []))
}
