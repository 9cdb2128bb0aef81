import assert from 'node:assert/strict'
import { test } from 'node:test'
import { chosenIn, differ, fits, leaves, pairIn, queryOf, together } from './narrow'

const wall = [
  { body: 'grey', coats: '2', clear: 'none', place: 'middle shelf, back' },
  { body: 'grey', coats: '1', clear: 'shiny', place: '' },
  { body: 'white', coats: '2', clear: 'shiny', place: 'top shelf' },
]

test('the address tells what is chosen', () => {
  assert.deepEqual(chosenIn('?body=grey&coats=2&place=middle+shelf%2C+back', wall), { body: 'grey', coats: '2', place: 'middle shelf, back' })
})

for (const search of ['', '?', '?body=', '?body=blue', '?coats=7&cone=6', '?clear=SHINY', '?place=', '?%']) {
  test(`what no tile has is passed over: ${search}`, () => assert.deepEqual(chosenIn(search, wall), {}))
}

test('a tile has all that is chosen, or is not shown', () => {
  const shown = (choice) => wall.map((tile) => fits(tile, choice))
  assert.deepEqual(shown({}), [true, true, true])
  assert.deepEqual(shown({ body: 'grey' }), [true, true, false])
  assert.deepEqual(shown({ body: 'grey', clear: 'shiny' }), [false, true, false])
  assert.deepEqual(shown({ body: 'white', clear: 'none' }), [false, false, false])
})

test('what is offered leaves something, whatever was chosen of the same', () => {
  assert.equal(leaves(wall, { body: 'white' }, 'clear', 'none'), false)
  assert.equal(leaves(wall, { body: 'white' }, 'clear', 'shiny'), true)
  assert.equal(leaves(wall, { body: 'white' }, 'body', 'grey'), true)
})

test('a third tile takes the place of the older', () => {
  let pair = []
  for (const [code, want] of [['R1', ['R1']], ['R2', ['R1', 'R2']], ['R3', ['R2', 'R3']], ['R2', ['R3']], ['R3', []]]) {
    pair = together(pair, code)
    assert.deepEqual(pair, want)
  }
})

test('the address tells the pair', () => {
  assert.deepEqual(pairIn('?beside=R1,R2', ['R1', 'R2']), ['R1', 'R2'])
  assert.deepEqual(pairIn('?beside=R1%2CR9', ['R1', 'R2']), ['R1'])
  assert.deepEqual(pairIn('?beside=R1,R1', ['R1', 'R2']), ['R1'])
  assert.deepEqual(pairIn('?beside=R1,R2,R3', ['R1', 'R2', 'R3']), ['R2', 'R3'])
  assert.deepEqual(pairIn('', ['R1']), [])
})

test('what the address is made of is read back', () => {
  const choice = { body: 'grey', place: 'middle shelf, back' }
  const query = queryOf(choice, ['R1', 'R2'])
  assert.deepEqual(chosenIn(query, wall), choice)
  assert.deepEqual(pairIn(query, ['R1', 'R2']), ['R1', 'R2'])
  assert.equal(queryOf({}, []), '')
})

test('white space is no difference', () => {
  assert.equal(differ(' a  b\n', 'a b'), false)
  assert.equal(differ('a b', 'ab'), true)
})
