// The rows of a plan: of a layer a medium and the ways of working it, of what is
// on the pot already a medium and whether a firing has fixed it. What is chosen
// is written, in words, into the text box that every input has; so the address,
// the engine and the rest of the form know nothing of choosers. Other words are
// read by the engine, which gives them back as choosers write them. Words that
// no chooser holds stay in the text box, in sight.
import * as words from '../words.yaml'
import { Box, part } from './box'
import { fill } from './say'

const mostWays = 4

/** The choosers of a row: first the medium. */
function choosers(row: Element): HTMLSelectElement[] {
  return [...row.querySelectorAll('select')]
}

/** Whether nothing was chosen in a row. */
function blank(row: Element | null): boolean {
  return !row || choosers(row)[0]?.value === ''
}

/** Whether a chooser of media says that the clay itself is worked. */
function bare(medium: HTMLSelectElement): boolean {
  return 'bare' in (medium.selectedOptions[0]?.dataset ?? {})
}

/** A row in words, as the engine understands them. Nothing is said until all is chosen that is needed. */
export function said(row: Element): string {
  const [medium, ...others] = choosers(row)
  const chosen = others.map((c) => c.value).filter((v) => v)
  if (!medium?.value || (bare(medium) && chosen.length === 0)) return ''
  if (chosen.length === 0) return medium.value
  return others[0] && 'fixed' in others[0].dataset ? `${medium.value} ${chosen[0]}` : `${medium.value} by ${chosen.join(' then ')}`
}

/** Whether some words are, or begin with, the name of an option. */
function begins(text: string, name: string, whole: boolean): boolean {
  const [said, meant] = [text.toLowerCase(), name.toLowerCase()]
  return said === meant || (!whole && said.startsWith(`${meant} `))
}

/** Chooses the option with the longest name that some words begin with, and gives the other words. */
export function choose(chooser: HTMLSelectElement, text: string, whole: boolean): string | undefined {
  const option = [...chooser.options]
    .filter((o) => o.value && begins(text, o.value, whole))
    .reduce<HTMLOptionElement | undefined>((a, b) => (a && a.value.length >= b.value.length ? a : b), undefined)
  if (!option) return undefined
  chooser.value = option.value
  return text.slice(option.value.length).trim()
}

export class RowsBox extends Box {
  readonly #root: HTMLElement
  readonly #list: HTMLElement
  readonly #parts: HTMLElement[] // shown while choosers can say it
  readonly #written: HTMLElement // shown while only words can
  readonly #less: HTMLElement
  readonly #text: HTMLInputElement
  readonly #blank: HTMLElement // a row to copy
  readonly #least: number
  readonly #most: number
  #shown = '' // what the text box held when the rows last said the same
  #said = '' // and how they say it

  constructor(root: HTMLElement) {
    super(root)
    this.#root = root
    this.#parts = [...root.querySelectorAll<HTMLElement>('[data-rows]')]
    this.#list = part(root, 'ol')
    this.#written = part(root, 'div[data-words]')
    this.#less = part(root, '[data-less]')
    this.#text = part(root, 'input')
    this.#blank = part<HTMLElement>(root, 'li').cloneNode(true) as HTMLElement
    this.#least = Number(root.dataset['rowsLeast'])
    this.#most = Number(root.dataset['rowsMost'])
    this.#list.addEventListener('input', () => this.#write())
    part(root, '[data-more]').addEventListener('click', () => this.#row()?.querySelector('select')?.focus())
    this.#less.addEventListener('click', () => this.#drop())
    this.#spread(this.#text.value)
  }

  override take(request: URLSearchParams): void {
    const joined = new URLSearchParams(request)
    const texts = request.getAll(this.name)
    if (texts.length > 0) joined.set(this.name, texts.join(', '))
    super.take(joined)
    this.#spread(this.#text.value)
  }

  override trim(): void {
    super.trim()
    if (this.#text.value !== this.#shown) this.#spread(this.#text.value)
    else if (this.#rows !== this.#said) this.#spread(this.#said) // the form was emptied
    while (this.#list.children.length > this.#least && blank(this.#list.lastElementChild)) this.#list.lastElementChild?.remove()
    this.#offer()
  }

  override say(text: string): void {
    super.say(text)
    this.#list.querySelector('select')?.removeAttribute('aria-invalid')
  }

  override refuse(text: string, number: number): void {
    super.refuse(text, number)
    if (this.#written.hidden) this.#list.querySelector('select')?.setAttribute('aria-invalid', 'true')
  }

  /** Shows as rows what the engine understood, once nobody types there. */
  override hear(chosen: string | null): void {
    if (chosen && this.#text.value !== this.#shown && document.activeElement !== this.#text) this.#spread(chosen)
  }

  /** The rows in words. */
  get #rows(): string {
    return [...this.#list.children].map(said).filter((s) => s).join(', ')
  }

  /** Writes what is chosen into the text box. */
  #write(): void {
    for (const row of this.#list.children) this.#fit(row)
    this.#said = this.#shown = this.#text.value = this.#rows
    this.#offer()
  }

  /** Offers in each chooser of ways what fits the medium and may follow the way before; one more chooser follows the last that is chosen. */
  #fit(row: Element): void {
    const [medium, ...ways] = choosers(row)
    if (!medium || !ways[0] || 'fixed' in ways[0].dataset) return
    const chosen = ways.map((w) => w.value).filter((v) => v)
    const all = [...part<HTMLSelectElement>(this.#blank, '[data-way]').options]
    let takes = false
    const before: string[] = []
    for (let n = 0; n < mostWays; n++) {
      const offered = all.filter((way) => way.value && !before.includes(way.value) && (!takes || 'takes' in way.dataset) && this.#fits(way, medium))
      const way = offered.find((o) => o.value === chosen[n])
      if (n > 0 && offered.length === 0) return drop(ways, n)
      const chooser = ways[n] ?? this.#way(row, n)
      const none = (all[0] as HTMLOptionElement).cloneNode(true) as HTMLOptionElement
      if (n > 0) none.text = words['calculator-then'] ?? ''
      else if (bare(medium)) none.text = words['calculator-choose'] ?? ''
      chooser.replaceChildren(none, ...offered.map((o) => o.cloneNode(true)))
      chooser.value = way?.value ?? ''
      chooser.disabled = offered.length === 0
      if (!way) return drop(ways, n + 1)
      takes ||= 'takes' in way.dataset
      before.push(way.value)
    }
  }

  /** Whether a way of working is for what a chooser of media says. */
  #fits(way: HTMLOptionElement, medium: HTMLSelectElement): boolean {
    if (!medium.value) return false
    if (bare(medium)) return 'bare' in way.dataset
    const only = way.dataset['fits'] ?? ''
    return only === '' || only.split(' ').includes(medium.selectedOptions[0]?.dataset['fits'] ?? '')
  }

  /** Adds the n-th chooser of ways to a row, from 1. */
  #way(row: Element, n: number): HTMLSelectElement {
    const chooser = part<HTMLSelectElement>(this.#blank, '[data-way]').cloneNode(true) as HTMLSelectElement
    choosers(row)[n]?.after(chooser)
    this.#name(row, [...this.#list.children].indexOf(row))
    return chooser
  }

  #row(): HTMLElement | undefined {
    const count = this.#list.children.length
    if (count >= this.#most) return undefined
    const row = this.#blank.cloneNode(true) as HTMLElement
    this.#list.append(row)
    this.#name(row, count)
    this.#fit(row)
    this.#offer()
    return row
  }

  /** Names the choosers of a row for those who do not see where they stand. */
  #name(row: Element, at: number): void {
    choosers(row).forEach((chooser, n) => {
      const name = n === 0 ? words['calculator-row-medium'] : 'fixed' in chooser.dataset ? words['calculator-row-fixed'] : n === 1 ? words['calculator-row-way'] : words['calculator-row-then']
      chooser.setAttribute('aria-label', fill(name, at + 1))
    })
  }

  #drop(): void {
    this.#list.lastElementChild?.remove()
    if (this.#list.children.length < this.#least) this.#row()
    this.#write()
    this.#text.dispatchEvent(new Event('input', { bubbles: true }))
  }

  /** Offers to add and to take away only where that does something. */
  #offer(): void {
    part<HTMLElement>(this.#root, '[data-more]').hidden = this.#list.children.length >= this.#most
    this.#less.hidden = this.#list.children.length <= this.#least && [...this.#list.children].every(blank)
  }

  /** Shows words as rows, or, where they hold more than rows can, as they are. */
  #spread(text: string): void {
    const wanted = text.split(',').map((piece) => piece.trim()).filter((piece) => piece)
    this.#list.replaceChildren()
    const whole = wanted.length <= this.#most && wanted.every((piece) => this.#set(piece))
    if (!whole) this.#list.replaceChildren()
    while (this.#list.children.length < this.#least) this.#row()
    for (const shown of this.#parts) shown.hidden = !whole
    this.#written.hidden = whole
    if (whole) {
      this.#shown = this.#text.value
      this.#said = this.#rows
    }
    this.#offer()
  }

  /** Adds a row that says some words; false where none does. */
  #set(piece: string): boolean {
    const row = this.#row()
    const medium = row && choosers(row)[0]
    const rest = medium && choose(medium, piece, false)
    if (!row || rest === undefined) return false
    this.#fit(row)
    if (rest === '') return true
    const ways = rest.replace(/^by /, '').split(' then ')
    return ways.length <= mostWays && ways.every((way, n) => {
      const chooser = choosers(row)[n + 1]
      if (!chooser || choose(chooser, way, true) === undefined) return false
      this.#fit(row)
      return true
    })
  }
}

/** drop removes the choosers from the n-th on, from 0. */
function drop(from: readonly HTMLSelectElement[], n: number): void {
  // One more than is chosen stays, to choose the next with.
  for (const chooser of from.slice(n)) chooser.remove()
}
