// Bench mode, the mixing sheet and the rows as a file, loaded when somebody
// wants one of them. Bench mode
// makes everything large, shows one box at a time with − and + beside it, keeps
// the screen awake where the browser can, and keeps what was typed and ticked
// through a sleep or a reload.
import * as words from '../words.yaml'
import { part } from './box'
import { save } from './csv'
import type { Form } from './form'
import { keep, recall } from './kept'
import { button, fill, make } from './say'
import { Sheet } from './sheet'
import { steppers } from './stepper'

/** Tool is what is asked for: one of the three, or what there was before a reload. */
export type Tool = 'bench' | 'sheet' | 'save' | 'again'

declare global {
  /** Set by this script, called by the desk. */
  var atBench: ((form: Form, tool: Tool) => void) | undefined
}

class Bench {
  readonly #form: Form
  readonly #things: HTMLElement[] // shown one at a time; the answer comes after the last
  readonly #way: HTMLElement
  readonly #place = make('span', '')
  readonly #back: HTMLButtonElement
  readonly #next: HTMLButtonElement
  readonly #linked: HTMLElement
  #at = 0
  #on = false
  #sheet: Sheet | undefined
  #ready = false // what is kept has been put back

  constructor(form: Form) {
    this.#form = form
    this.#things = [...form.element.querySelectorAll<HTMLElement>(':scope > :is(.reckon-box, .reckon-either)')]
    this.#back = button(words['calculator-bench-back'], () => this.#go(this.#at - 1))
    this.#next = button(words['calculator-bench-next'], () => this.#go(this.#at + 1))
    this.#place.role = 'status'
    this.#way = make('p', 'reckon-keys reckon-way', this.#back, this.#place, this.#next)
    this.#linked = make('p', 'reckon-linked', words['calculator-bench-kept'], button(words['calculator-linked-clear'], () => form.clear()))
    const decimal = new URLSearchParams(form.element.dataset['settings']).get('decimal') ?? '.'
    for (const box of form.element.querySelectorAll<HTMLElement>('[data-input]')) steppers(box, decimal)

    form.element.addEventListener('answer', () => {
      this.#sheet?.update()
      this.#keep()
    })
    form.element.addEventListener('reset', () => {
      this.#linked.remove()
      this.#sheet?.clear()
      if (this.#on) this.#go(0)
    })
    // Enter goes on from the box in sight, as the button does.
    form.element.addEventListener('keydown', (event) => this.#key(event), { capture: true })
  }

  use(tool: Tool): void {
    if (tool === 'bench') this.#switch(!this.#on)
    else if (tool === 'sheet') this.#open([], true)
    else this.#again()
    this.#ready = true
    this.#keep()
  }

  /** Puts back what there was before a reload. Numbers in the address win over those kept. */
  #again(): void {
    const kept = recall(this.#form.part)
    if (!kept) return
    if (!this.#form.restored && kept.request) {
      this.#form.restore(new URLSearchParams(kept.request), true)
      this.#form.element.prepend(this.#linked)
    }
    this.#at = kept.at
    if (kept.sheet) this.#open(kept.ticks)
    if (kept.bench) this.#switch(true)
  }

  #keep(): void {
    if (!this.#ready) return
    const form = this.#form
    keep(form.part, this.#on || this.#sheet ? {
      request: form.request.toString(), bench: this.#on, at: this.#at, sheet: this.#sheet !== undefined, ticks: [...(this.#sheet?.ticks ?? [])],
    } : undefined)
  }

  #switch(on: boolean): void {
    this.#on = on
    const form = this.#form.element
    document.documentElement.classList.toggle('at-bench', on)
    this.#form.section.classList.toggle('reckon-bench', on)
    const button = form.querySelector<HTMLElement>('[data-tool=bench]')
    if (button) {
      button.ariaPressed = String(on)
      button.textContent = (on ? words['calculator-bench-leave'] : words['calculator-bench']) ?? ''
    }
    const awake = form.querySelector<HTMLElement>('[data-awake]:not([hidden])')
    if (awake && (awake.ariaPressed === 'true') !== on) awake.click()
    if (on) form.querySelector(':scope > .reckon-keys')?.before(this.#way)
    else this.#way.remove()
    this.#go(on ? this.#at : 0)
  }

  /** Shows one box, or after the last of them the answer. */
  #go(to: number): void {
    const last = this.#things.length
    this.#at = Math.min(Math.max(0, to), last)
    const place = this.#at === last ? words['calculator-bench-answer'] : fill(words['calculator-bench-place'], this.#at + 1, last)
    this.#things.forEach((thing, n) => thing.classList.toggle('away', this.#on && n !== this.#at))
    this.#form.element.classList.toggle('at-answer', this.#on && this.#at === last)
    this.#place.textContent = place ?? ''
    this.#back.ariaDisabled = String(this.#at === 0)
    this.#next.ariaDisabled = String(this.#at === last)
    const line = this.#form.element.querySelector('[data-headline]')
    if (this.#on && line) this.#way.before(line)
    this.#keep()
  }

  #key(event: KeyboardEvent): void {
    const typed = event.target instanceof Element && event.target.matches('[data-input] input')
    if (!this.#on || !typed || event.key !== 'Enter' || event.isComposing) return
    const thing = this.#things[this.#at]
    const boxes = [...(thing?.querySelectorAll<HTMLInputElement>('input[name]') ?? [])]
    if (event.target !== boxes.at(-1)) return // the form itself leads to the next box of a list
    event.preventDefault()
    event.stopPropagation()
    this.#go(this.#at + 1)
    this.#things[this.#at]?.querySelector<HTMLElement>('input[name], select')?.focus()
    if (this.#at === this.#things.length) this.#form.element.requestSubmit()
  }

  #open(ticks: readonly string[], show = false): void {
    if (!this.#sheet) {
      this.#sheet = new Sheet(this.#form, ticks, () => this.#keep(), () => this.#close())
      this.#form.element.after(this.#sheet.element)
    }
    if (show) this.#sheet.element.focus()
  }

  #close(): void {
    this.#sheet?.element.remove()
    this.#sheet = undefined
    this.#keep()
    this.#form.element.querySelector<HTMLElement>('[data-tool=sheet]')?.focus()
  }
}

const benches = new Map<Form, Bench>()

globalThis.atBench = (form, tool) => {
  if (tool === 'save') {
    save(part(form.element, 'table'), form.name)
    return
  }
  const bench = benches.get(form) ?? new Bench(form)
  benches.set(form, bench)
  bench.use(tool)
}
