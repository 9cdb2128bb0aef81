// What few readers want: bench mode, the mixing sheet, the rows as a file, a
// link to copy, a screen that stays awake. Bench mode makes everything large,
// shows one box at a time with − and + beside it, keeps the screen awake where
// the browser can, and keeps what was typed and ticked through a sleep or a
// reload.
import * as words from '../words.yaml'
import { awake } from './awake'
import { fields, isField, part } from './box'
import { copy } from './copy'
import { save } from './csv'
import type { Form } from './form'
import { keep, recall, type Kept } from './kept'
import { button, fill, make, offer } from './say'
import { named, Sheet } from './sheet'
import { steppers } from './stepper'

/** Tool is what is asked for, or "again": what there was before a reload. */
export type Tool = 'bench' | 'sheet' | 'save' | 'copy' | 'awake' | 'again'

declare global {
  /** Set by this script, called by the desk. */
  var atBench: ((form: Form, tool: Tool) => void) | undefined
}

class Bench {
  readonly #form: Form
  readonly #things: HTMLElement[] // shown one at a time; the answer comes after the last
  readonly #switcher: HTMLElement // the button that starts and ends bench mode
  readonly #home: Comment // where that button stands while it is off
  readonly #out = make('p', 'reckon-keys reckon-out') // where it stands while it is on: first, and in sight with the sheet open, too
  readonly #way: HTMLElement
  readonly #place = make('span', '')
  readonly #back: HTMLButtonElement
  readonly #next: HTMLButtonElement
  readonly #linked: HTMLElement
  readonly #away = offer() // offers the sheet again
  #at = 0
  #on = false
  #sheet: Sheet | undefined
  #ready = false // what is kept has been put back
  #aside: Kept | undefined // a sheet with other numbers than the link's that led here

  constructor(form: Form) {
    this.#form = form
    this.#things = [...form.element.querySelectorAll<HTMLElement>(':scope > [data-stop]')]
    this.#switcher = part(form.element, '[data-tool=bench]')
    this.#home = document.createComment('')
    this.#switcher.before(this.#home)
    this.#back = button(words['calculator-bench-back'], () => this.#go(this.#at - 1))
    this.#next = button(words['calculator-bench-next'], () => this.#go(this.#at + 1))
    this.#next.className = 'reckon-go'
    this.#place.setAttribute('role', 'status')
    this.#way = make('p', 'reckon-keys reckon-way', this.#back, this.#place, this.#next)
    this.#linked = offer(words['calculator-bench-kept'], button(words['calculator-linked-clear'], () => form.clear()))
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
    if (tool === 'bench') this.#switch(!this.#on, true)
    else if (tool === 'sheet') this.#open([], true)
    else this.#again()
    if (tool !== 'again') this.#aside = undefined // what is opened now takes its place
    this.#ready = true
    this.#keep()
  }

  /** Puts back what there was before a reload. Numbers in the address win over those kept. */
  #again(): void {
    const kept = recall(this.#form.part)
    if (!kept) return
    if (this.#form.linked && kept.sheet && kept.request !== this.#form.request.toString()) return this.#setAside(kept)
    if (!this.#form.restored && kept.request) {
      this.#form.restore(new URLSearchParams(kept.request), true)
      this.#form.element.prepend(this.#linked)
    }
    this.#at = kept.at
    if (kept.sheet) this.#open(kept.ticks)
    if (kept.bench) this.#switch(true, false)
    // On its own page, or by a link to it, a sheet that is open is what the reader came back for.
    const own = this.#form.section.hasAttribute('data-own') || location.hash === `#${this.#form.part}`
    if (this.#sheet && own && this.#form.fresh) this.#sheet.element.scrollIntoView()
  }

  /** Leaves a sheet as it is kept while a link's numbers stand in the boxes, and offers it. */
  #setAside(kept: Kept): void {
    this.#aside = kept
    const line = offer(words['calculator-sheet-other'], ' ', button(words['calculator-sheet-mine'], () => {
      line.remove()
      this.#aside = undefined
      this.#form.take(new URLSearchParams(kept.request))
      this.#open(kept.ticks, true)
      this.#keep()
    }))
    const put = (): void => {
      if (this.#aside !== kept) return
      const to = this.#form.answer ? part(this.#form.section, '[data-result]') : this.#form.element // a link leads to its answer
      if (line.parentElement !== to) to.prepend(line)
    }
    put()
    this.#form.element.addEventListener('answer', put)
  }

  #keep(): void {
    if (!this.#ready || this.#aside) return
    const form = this.#form
    keep(form.part, this.#on || this.#sheet ? {
      request: form.request.toString(), bench: this.#on, at: this.#at, sheet: this.#sheet !== undefined, ticks: [...(this.#sheet?.ticks ?? [])],
      name: named(form.section),
    } : undefined)
  }

  /** Starts or ends bench mode; pressed says that somebody wants to see it now. */
  #switch(on: boolean, pressed: boolean): void {
    this.#on = on
    document.documentElement.classList.toggle('at-bench', on)
    this.#form.section.classList.toggle('reckon-bench', on)
    for (let e = this.#form.section.parentElement; e; e = e.parentElement) e.classList.toggle('around-bench', on) // what :has() would say in newer browsers
    this.#switcher.setAttribute('aria-pressed', String(on))
    this.#switcher.textContent = (on ? words['calculator-bench-leave'] : words['calculator-bench']) ?? ''
    awake(on)
    if (on) {
      this.#out.append(this.#switcher)
      this.#form.section.prepend(this.#out)
      this.#home.parentElement?.before(this.#way)
    } else {
      this.#home.after(this.#switcher)
      this.#out.remove()
      this.#way.remove()
    }
    this.#go(on ? this.#at : 0, pressed)
    if (pressed) this.#switcher.focus({ preventScroll: true })
  }

  /** Shows one box, or after the last of them the answer, from its top. */
  #go(to: number, pressed = true): void {
    const last = this.#things.length
    this.#at = Math.min(Math.max(0, to), last)
    const place = this.#at === last ? words['calculator-bench-answer'] : fill(words['calculator-bench-place'], this.#at + 1, last)
    this.#things.forEach((thing, n) => thing.classList.toggle('away', this.#on && n !== this.#at))
    this.#form.element.classList.toggle('at-first', this.#on && this.#at === 0)
    this.#form.element.classList.toggle('at-answer', this.#on && this.#at === last)
    this.#place.textContent = place ?? ''
    this.#back.setAttribute('aria-disabled', String(this.#at === 0))
    this.#next.setAttribute('aria-disabled', String(this.#at === last))
    const line = this.#form.section.querySelector('[data-headline]')
    if (this.#on && line) this.#way.before(line)
    if (pressed) (this.#at === last && this.#on ? part(this.#form.section, '[data-result]') : this.#form.section).scrollIntoView()
    this.#keep()
  }

  #key(event: KeyboardEvent): void {
    if (!this.#on || !isField(event.target) || event.key !== 'Enter' || event.isComposing) return
    const thing = this.#things[this.#at]
    const seen = (within: HTMLElement | undefined): HTMLElement[] =>
      [...(within?.querySelectorAll<HTMLElement>(`${fields}, [data-more]`) ?? [])].filter((box) => box.getClientRects().length > 0)
    if (event.target !== seen(thing).filter(isField).at(-1)) return // the form itself leads to the next box of a list
    event.preventDefault()
    event.stopPropagation()
    this.#go(this.#at + 1)
    seen(this.#things[this.#at])[0]?.focus()
    if (this.#at === this.#things.length) this.#form.element.requestSubmit()
  }

  #open(ticks: readonly string[], show = false): void {
    this.#away.remove()
    if (!this.#sheet) {
      this.#sheet = new Sheet(this.#form, ticks, () => this.#keep(), () => this.#close())
      part(this.#form.section, '[data-result]').after(this.#sheet.element)
      this.#form.section.classList.toggle('reckon-tallied', true)
    }
    if (!show) return
    this.#sheet.element.focus({ preventScroll: true })
    this.#sheet.element.scrollIntoView()
  }

  /** Puts the sheet away; one with ticks can be had again as it was. */
  #close(): void {
    const ticks = [...(this.#sheet?.ticks ?? [])]
    const to = this.#form.section.querySelector<HTMLElement>('[data-tool=sheet]')
    this.#sheet?.element.remove()
    this.#sheet = undefined
    this.#form.section.classList.toggle('reckon-tallied', false)
    this.#keep()
    to?.focus()
    if (ticks.length === 0) return
    this.#away.replaceChildren(words['calculator-sheet-away'] ?? '', ' ', button(words['calculator-sheet-again'], () => {
      this.#open(ticks, true)
      this.#keep()
    }))
    to?.parentElement?.after(this.#away)
  }
}

const benches = new Map<Form, Bench>()

globalThis.atBench = (form, tool) => {
  if (tool === 'save') return save(part(form.section, '[data-answers] table'), form.name)
  if (tool === 'copy') return void copy(form)
  if (tool === 'awake') return awake()
  const bench = benches.get(form) ?? new Bench(form)
  benches.set(form, bench)
  bench.use(tool)
}
