import assert from 'node:assert/strict'
import { test } from 'node:test'
import { stepped } from './stepper'

const cases = [
  // text, up, decimal mark, step named by the box, what comes of it
  ['7', true, '.', undefined, '8'],
  ['7', false, '.', undefined, '6'],
  ['29', true, '.', undefined, '30'],
  ['30', true, '.', undefined, '35'],
  ['299', true, '.', undefined, '304'],
  ['300', false, '.', undefined, '250'],
  ['3000', true, '.', undefined, '3500'],
  ['1 745', true, '.', undefined, '1795'],
  ['1.45', true, '.', undefined, '1.46'],
  ['1.45', false, '.', undefined, '1.44'],
  ['1,45', true, ',', undefined, '1,46'],
  ['1,45', true, '.', undefined, '1,46'], // the other mark is a decimal too, and stays
  ['1.4', true, '.', '0.01', '1.41'],
  ['12', true, '.', '0.1', '12.1'],
  ['12', true, ',', '0.1', '12,1'],
  ['0.5', false, '.', '1', '0.0'],
  ['0', false, '.', undefined, '0'],
  ['', true, '.', undefined, undefined],
  [' ', true, '.', undefined, undefined],
  ['.5', true, '.', undefined, '0.6'],
  ['.', true, '.', undefined, undefined],
  [' 7 ', true, '.', undefined, '8'],
  ['1.745', true, '.', undefined, '1.746'],
  ['1,745', true, '.', undefined, undefined], // one thousand and more, perhaps
  ['1.745', true, ',', undefined, undefined],
  ['4 1/2', true, '.', undefined, undefined],
  ['7 g', true, '.', undefined, undefined],
  ['-3', true, '.', undefined, undefined],
  ['1.2.3', true, '.', undefined, undefined],
]

for (const [text, up, decimal, named, want] of cases) {
  test(`${up ? 'up' : 'down'} from "${text}" with "${decimal}" and a step of ${named ?? 'its own'}`, () => {
    assert.equal(stepped(text, up, decimal, named), want)
  })
}
