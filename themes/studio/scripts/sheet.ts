// The mixing sheet: what the answer says to weigh, in order, as lines to tick
// off at the bench or on paper. Its lines are the answer's rows where it has
// rows, else the outputs that the page names. A tick belongs to a line's words:
// when an amount changes its tick goes, since that has not been weighed.
import * as words from '../words.yaml'
import { part } from './box'
import type { Form } from './form'
import { button, fill, make, offer } from './say'

/** Line is one thing to weigh. */
interface Line {
  readonly what: string
  readonly weigh: string
  readonly total: string // together in the bucket by then
  readonly alone: boolean // by itself, on the fine scale
}

/** lines reads what to weigh from an answer. */
function lines(form: Form, answer: URLSearchParams, order: string, alone: string): Line[] {
  const label = (name: string): string => form.section.querySelector(`dd > output[name="${name}"]`)?.closest('dd')?.parentElement?.querySelector('dt')?.textContent ?? ''
  if (answer.has('row.1.weigh')) {
    const unit = form.section.querySelector<HTMLElement>('[data-column=weigh]')?.dataset['unit'] ?? ''
    const rows: Line[] = []
    for (let n = 1; answer.has(`row.${n}.weigh`); n++) {
      const say = (column: string): string => answer.get(`row.${n}.${column}`) ?? ''
      rows.push({ what: say('what'), weigh: `${say('weigh')} ${unit}`, total: `${say('total')} ${unit}`, alone: false })
    }
    return rows
  }
  const names = order.split(' ').filter((name) => Number(answer.get(`value.${name}`)) > 0)
  const places = Math.max(0, ...names.map((name) => /^[\d\s]*[.,](\d+)/.exec(answer.get(`text.${name}`) ?? '')?.[1]?.length ?? 0))
  const mark = new URLSearchParams(form.element.dataset['settings']).get('decimal') ?? '.'
  let sum = 0
  return names.map((name) => {
    sum += Number(answer.get(`value.${name}`))
    const unit = answer.get(`unit.${name}`) ?? ''
    return {
      what: label(name),
      weigh: answer.get(`text.${name}`) ?? '',
      total: `${grouped(sum.toFixed(places), mark)} ${unit}`,
      alone: name === alone,
    }
  })
}

/** tickOf names a line's tick: another amount is another tick. */
function tickOf(line: Line): string {
  return `${line.what} ${line.weigh} ${line.total}`
}

/** grouped sets a number as the answers are: digits in threes from five on. */
export function grouped(number: string, mark: string): string {
  const [whole = '', after] = number.split('.')
  const parted = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u202f') : whole
  return after === undefined ? parted : parted + mark + after
}

/** named returns the name of a calculator as a screen reader says it. */
export function named(section: HTMLElement): string {
  const heading = document.getElementById(section.getAttribute('aria-labelledby') ?? '')
  return heading?.textContent ?? section.getAttribute('aria-label') ?? ''
}

/** Ticked is what was ticked, and in which boxes' numbers. */
interface Ticked {
  readonly request: string
  readonly ticks: ReadonlySet<string>
}

export class Sheet {
  readonly #form: Form
  readonly #order: string
  readonly #alone: string // the output to weigh by itself
  readonly #changed: () => void
  readonly #list = make('ol', 'tally-lines')
  readonly #case = make('p', 'tally-case')
  readonly #care = make('div', 'caution')
  readonly #lost = offer() // offers ticks back that went with a change of the numbers
  readonly element: HTMLElement
  ticks: Set<string>
  #ticked: Ticked | undefined // as it was when a line was last ticked
  #shown = '' // the lines as they stand

  /** changed is called after each tick, closed when the sheet is put away. */
  constructor(form: Form, ticks: readonly string[], changed: () => void, closed: () => void) {
    this.#form = form
    const key = form.section.querySelector<HTMLElement>('[data-order]')
    this.#order = key?.dataset['order'] ?? ''
    this.#alone = key?.dataset['alone'] ?? ''
    this.#changed = changed
    this.ticks = new Set(ticks)
    const title = named(form.section)
    const blank = (word: string | undefined): HTMLElement => make('span', '', word ?? '')
    const keys = make('p', 'reckon-keys', button(words['calculator-sheet-print'], () => print()), button(words['calculator-sheet-close'], closed))
    this.#list.dataset['lines'] = ''
    this.#care.setAttribute('role', 'note')
    this.#care.setAttribute('aria-label', form.section.querySelector('[data-caution-words]')?.textContent ?? '')
    this.#lost.hidden = true
    this.element = make('section', 'tally',
      make('p', 'reckon-name', fill(words['calculator-sheet-name'], title)), this.#case,
      make('p', 'tally-blanks', blank(words['calculator-sheet-date']), blank(words['calculator-sheet-by'])),
      this.#care, this.#lost, this.#list, keys)
    this.element.setAttribute('aria-label', fill(words['calculator-sheet-name'], title))
    this.element.tabIndex = -1
    this.update()
  }

  /** Shows the answer that the form has now; without one the sheet is empty. */
  update(): void {
    const answer = this.#form.answer
    const all = answer ? lines(this.#form, answer, this.#order, this.#alone) : []
    this.#case.textContent = answer?.get('headline') ?? this.#form.element.querySelector('[data-headline]')?.textContent ?? ''
    const heading = part(this.#form.section, '[data-caution-words]').cloneNode(true) as HTMLElement
    heading.removeAttribute('id')
    this.#care.replaceChildren(heading, ...[...this.#form.section.querySelectorAll('[data-always-caution], [data-list=caution] li')]
      .map((caution) => make('p', '', caution.textContent ?? '')))
    this.#care.hidden = this.#care.children.length < 2
    // Lines that stand are left alone: a finger may be on one of them.
    const shown = JSON.stringify(all)
    if (shown === this.#shown) return
    this.#shown = shown
    const amounts = new Set(all.map(tickOf))
    const ticked = [...(this.#ticked?.ticks ?? [])]
    // The same amounts as before: their ticks are back.
    if (ticked.length > 0 && ticked.every((tick) => amounts.has(tick))) this.ticks = new Set(ticked)
    this.#list.replaceChildren(...all.map((line) => this.#line(line)))
    this.#list.classList.toggle('tally-many', all.length > 14)
    if (answer) this.ticks = new Set([...this.#list.querySelectorAll('input')].filter((tick) => tick.checked).map((tick) => tick.value))
    if (answer && !this.#ticked) this.#mark()
    this.#offer()
    this.#next()
  }

  /** Offers the ticked numbers again while ticks are gone with a change of them. */
  #offer(): void {
    const gone = this.#ticked ? [...this.#ticked.ticks].filter((tick) => !this.ticks.has(tick)).length : 0
    this.#lost.hidden = gone === 0
    const back = button(words['calculator-sheet-back'], () => this.#ticked && this.#form.take(new URLSearchParams(this.#ticked.request)))
    this.#lost.replaceChildren(words['calculator-sheet-lost'] ?? '', ' ', back)
  }

  /** Notes what is ticked for the numbers as they stand. */
  #mark(): void {
    this.#ticked = this.ticks.size > 0 ? { request: this.#form.request.toString(), ticks: new Set(this.ticks) } : undefined
  }

  #line(line: Line): HTMLElement {
    const tick = make('input', '')
    tick.type = 'checkbox'
    tick.value = tickOf(line)
    tick.checked = this.ticks.has(tick.value)
    tick.addEventListener('change', () => {
      if (tick.checked) this.ticks.add(tick.value)
      else this.ticks.delete(tick.value)
      this.#mark()
      this.#offer()
      this.#next()
      this.#changed()
    })
    const alone = line.alone ? make('small', '', words['calculator-sheet-alone']) : undefined
    const together = line.alone ? '' : make('small', '', fill(words['calculator-sheet-together'], line.total))
    return make('li', '', make('label', '', tick, make('span', '', line.what, alone), make('b', '', line.weigh), together))
  }

  /** Takes every tick back, unless the same numbers come again. */
  clear(): void {
    this.ticks.clear()
    for (const tick of this.#list.querySelectorAll('input')) tick.checked = false
    this.#next()
  }

  /** Marks the line that comes next. */
  #next(): void {
    const items = [...this.#list.children]
    const next = items.find((item) => !item.querySelector('input')?.checked)
    for (const item of items) {
      if (item === next) item.setAttribute('aria-current', 'step')
      else item.removeAttribute('aria-current')
    }
  }
}
