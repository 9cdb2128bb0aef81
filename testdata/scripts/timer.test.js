import assert from 'node:assert/strict'
import { test } from 'node:test'
import { dial, due, left, said, waitsOf } from './timer'

test('times are read as the page holds them', () => {
  assert.deepEqual(waitsOf(''), [])
  assert.deepEqual(waitsOf('120'), [{ seconds: 120, most: 0 }])
  assert.deepEqual(waitsOf('30 600-1800'), [{ seconds: 30, most: 0 }, { seconds: 600, most: 1800 }])
})

test('what is left follows the clock, whatever happened in between', () => {
  const end = 1_000_000
  for (const [now, want] of [
    [end - 120_000, 120], [end - 119_999, 120], [end - 119_000, 119], [end - 1, 1], [end, 0], [end + 3_600_000, 0],
  ]) {
    assert.equal(left(end, now), want, `${now - end} ms after the end`)
  }
})

test('a time that is over is due until that has been said', () => {
  const timer = (step, end, said) => ({ step, seconds: 60, end, said })
  const timers = [timer('a', 1000, false), timer('b', 1000, true), timer('c', 1001, false), timer('d', 9000, false)]
  assert.deepEqual(due(timers, 999).map(({ step }) => step), [])
  assert.deepEqual(due(timers, 1000).map(({ step }) => step), ['a'])
  assert.deepEqual(due(timers, 1e9).map(({ step }) => step), ['a', 'c', 'd'])
})

test('a dial shows hours only where there are some', () => {
  for (const [seconds, want] of [[0, '0:00'], [5, '0:05'], [65, '1:05'], [3599, '59:59'], [3600, '1:00:00'], [14_400, '4:00:00'], [3905, '1:05:05']]) {
    assert.equal(dial(seconds), want)
  }
})

test('a time is said in its largest whole unit', () => {
  for (const [seconds, want] of [[30, '30 seconds'], [60, '1 minute'], [90, '90 seconds'], [1200, '20 minutes'], [3600, '1 hour'], [5400, '90 minutes'], [14_400, '4 hours']]) {
    assert.equal(said(seconds), want)
  }
})
