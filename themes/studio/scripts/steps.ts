// The steps of a plan, in order. A question to the label is shown as a
// question, so that nobody takes it for a yes.
import * as words from '../words.yaml'
import { part } from './box'
import { fill, make } from './say'

/** showSteps shows the rows of a plan as a list. */
export function showSteps(root: HTMLElement, answer: URLSearchParams): void {
  const list = root.querySelector<HTMLElement>('[data-steps]')
  if (!list) return
  const steps: HTMLElement[] = []
  for (let n = 1; answer.has(`row.${n}.what`); n++) {
    const say = (column: string): string => answer.get(`row.${n}.${column}`) ?? ''
    steps.push(make('li', '',
      make('p', 'reckon-do', say('what')),
      make('p', 'reckon-state', fill(words['calculator-step-state'], say('state'))),
      say('ask') ? make('p', 'reckon-ask', say('ask')) : undefined,
      say('why') ? make('p', '', say('why')) : undefined,
      care(say('caution')),
    ))
  }
  list.replaceChildren(...steps)
  list.hidden = steps.length === 0
}

/** care is a caution's words with its sign, which the page has already. */
function care(text: string): HTMLElement | undefined {
  if (!text) return undefined
  const sign = part(document, '.caution-words svg, .reckon-care svg').cloneNode(true)
  return make('p', 'reckon-care', sign, ' ', text)
}
