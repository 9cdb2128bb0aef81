import assert from 'node:assert/strict'
import { test } from 'node:test'
import { choose, said } from './rows'

/** chooser stands for a select element with these options. */
function chooser(values, { value = '', bare = [], fixed = false } = {}) {
  const options = ['', ...values].map((v) => ({ value: v, dataset: bare.includes(v) ? { bare: '' } : {} }))
  return { options, value, dataset: fixed ? { fixed: '' } : {}, get selectedOptions() { return options.filter((o) => o.value === this.value) } }
}

/** row stands for a row of choosers. */
const row = (...choosers) => ({ querySelectorAll: () => choosers })

const media = ['Slip', 'Slip glaze', 'Underglaze', 'The clay itself']

test('the longest name that words begin with is chosen', () => {
  for (const [words, whole, rest, chosen] of [
    ['slip glaze by Dipping', false, 'by Dipping', 'Slip glaze'],
    ['Slip by Pouring', false, 'by Pouring', 'Slip'],
    ['UNDERGLAZE', false, '', 'Underglaze'],
    ['Slippery', false, undefined, ''],
    ['Slip by Pouring', true, undefined, ''],
    ['slip glaze', true, '', 'Slip glaze'],
    ['', false, undefined, ''],
  ]) {
    const medium = chooser(media)
    assert.equal(choose(medium, words, whole), rest, words)
    assert.equal(medium.value, chosen, words)
  }
})

test('a row is said as the engine understands it', () => {
  const ways = ['Pouring', 'Scratching through']
  const medium = (value) => chooser(media, { value, bare: ['The clay itself'] })
  const way = (value) => chooser(ways, { value })
  for (const [choosers, want] of [
    [[medium(''), way('Pouring')], ''],
    [[medium('Slip'), way('')], 'Slip'],
    [[medium('Slip'), way('Pouring'), way('')], 'Slip by Pouring'],
    [[medium('Slip'), way('Pouring'), way('Scratching through')], 'Slip by Pouring then Scratching through'],
    [[medium('The clay itself'), way('')], ''],
    [[medium('The clay itself'), way('Scratching through')], 'The clay itself by Scratching through'],
    [[medium('Slip'), chooser(['fixed', 'loose'], { value: 'fixed', fixed: true })], 'Slip fixed'],
  ]) {
    assert.equal(said(row(...choosers)), want)
  }
})
