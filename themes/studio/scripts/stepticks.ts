// What a lesson's page shows of what is kept of it: ticks at its steps, and at its
// top the step at which to go on.
import * as words from '../words.yaml'
import { button, fill } from './say'
import type { Place } from './stepkept'

/** stepsOf returns the steps of the page, in order. */
export function stepsOf(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>('[data-step-key]')]
}

/** keyOf returns the key of a step. */
export function keyOf(step: HTMLElement | undefined): string {
  return step?.dataset['stepKey'] ?? ''
}

/** showPlace shows what is kept; clear is called when the ticks are to go. */
export function showPlace(way: HTMLElement, place: Place | undefined, clear: () => void): void {
  const steps = stepsOf()
  const ticks = new Set(place?.ticks)
  steps.forEach((step, n) => {
    const done = ticks.has(keyOf(step))
    if (done) step.dataset['done'] = ''
    else step.removeAttribute('data-done')
    step.querySelector('[data-number]')?.setAttribute('aria-label', fill(done ? words['step-number-done'] : words['step-number'], n + 1))
  })
  const at = place ? steps.findIndex((step) => keyOf(step) === place.at) : -1
  const [go, says, ...rest] = way.children
  for (const old of rest) old.remove()
  if (go) go.textContent = (at < 1 ? words['step-view'] : fill(words['step-go-on'], at + 1)) ?? ''
  if (steps.some((step) => ticks.has(keyOf(step)))) says?.after(button(words['step-clear'], clear))
}
