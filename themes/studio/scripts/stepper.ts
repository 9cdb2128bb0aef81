// The large − and + beside number boxes in bench mode.
import * as words from '../words.yaml'
import { button, fill } from './say'

/**
 * stepped gives what one press makes of a number as typed: a change in its last
 * place, of a whole number about a tenth, or by the step that the box names.
 * decimal is the mark of the course's language. Text that is no plain number,
 * such as a fraction, has no next.
 */
export function stepped(text: string, up: boolean, decimal: string, named: string | undefined): string | undefined {
  const [, whole, mark = decimal, after = ''] = /^(?=[\d.,])([\d\s]*)(?:([.,])(\d+))?$/.exec(text.trim()) ?? []
  // "1,745" may be one thousand and more: the calculator asks back, and so no step is sure.
  if (whole === undefined || (mark !== decimal && after.length === 3)) return undefined
  const value = Number(`${whole.replace(/\s/g, '')}.${after}`)
  const places = Math.max(after.length, named?.split('.')[1]?.length ?? 0)
  const step = named ? Number(named) : places > 0 ? 10 ** -places : sensible(value)
  return Math.max(0, value + (up ? step : -step)).toFixed(places).replace('.', mark)
}

/** sensible is a step for a whole number. */
function sensible(value: number): number {
  return value < 30 ? 1 : value < 300 ? 5 : value < 3000 ? 50 : 500
}

/** steppers puts the two buttons beside every number box of an input. Boxes that are added to a list later are copies, buttons and all. */
export function steppers(root: HTMLElement, decimal: string): void {
  if ('words' in root.dataset || 'rowsMost' in root.dataset) return
  const label = root.querySelector('label:not([data-count]), legend')?.textContent ?? ''
  for (const input of root.querySelectorAll<HTMLInputElement>('input[name]')) {
    for (const up of [false, true]) {
      const key = button(up ? '+' : '−', () => undefined)
      key.className = 'reckon-step'
      key.dataset['up'] = up ? 'up' : ''
      key.setAttribute('aria-label', fill(up ? words['calculator-bench-more'] : words['calculator-bench-less'], label))
      if (up) input.after(key)
      else input.before(key)
    }
  }
  // A specific gravity starts at that of water.
  const start = root.dataset['default'] || (root.dataset['step'] === '0.01' ? '1' : '0')
  root.addEventListener('click', (event) => {
    const key = event.target instanceof Element && event.target.closest<HTMLElement>('[data-up]')
    const input = key && key.parentElement?.querySelector<HTMLInputElement>('input[name]')
    if (!key || !input) return
    const next = stepped(input.value || start, key.dataset['up'] !== '', decimal, root.dataset['step'])
    if (next === undefined) return
    input.value = next
    input.dispatchEvent(new Event('input', { bubbles: true }))
  })
}
