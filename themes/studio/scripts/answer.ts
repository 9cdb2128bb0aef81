// What a form shows of an answer: numbers, rows, drawing, notes and cautions.
import { part } from './box'
import { make } from './say'

/** Rows shows the rows of an answer in its own way. */
export type Rows = (root: HTMLElement, answer: URLSearchParams) => void

const svgSpace = 'http://www.w3.org/2000/svg'

export class AnswerView {
  readonly #root: HTMLElement
  readonly #outputs: HTMLOutputElement[]
  readonly #section: HTMLElement
  readonly #folder: string
  readonly #others: Rows | undefined

  /**
   * section is the calculator's whole part of the page, folder where the
   * calculators' own pages are; others shows what is no table.
   */
  constructor(section: HTMLElement, folder: string, others?: Rows) {
    this.#section = section
    this.#folder = folder
    this.#others = others
    this.#root = part(section, '[data-answers]')
    this.#outputs = [...section.querySelectorAll('output')]
  }

  clear(): void {
    this.show(new URLSearchParams())
  }

  /** Shows an answer whole: its cautions, what it comes to, whether that is any good, the figures, and what to do with them next. */
  show(answer: URLSearchParams): void {
    this.#sayings('caution', answer)
    part(this.#root, '[data-head]').textContent = answer.get('headline')
    this.#sayings('judged', answer)
    this.#numbers(answer)
    this.#rows(answer)
    this.#others?.(this.#root, answer)
    this.#next(answer)
    this.#sayings('note', answer)
    this.#drawing(answer.get('drawing'))
    this.#root.hidden = !answer.has('headline')
  }

  /** The first number shown, with its unit. */
  get first(): string {
    return this.#outputs.find((o) => o.firstChild)?.parentElement?.textContent ?? ''
  }

  /** Each output holds its value at full precision and its text for people. */
  #numbers(answer: URLSearchParams): void {
    for (const output of this.#outputs) {
      const text = answer.get(`text.${output.name}`)
      const data = document.createElement('data')
      data.value = answer.get(`value.${output.name}`) ?? text ?? ''
      data.textContent = text
      output.replaceChildren(...(text === null ? [] : [data]))
      const line = output.closest<HTMLElement>('[data-line]')
      if (line) line.hidden = text === null
    }
    for (const fold of this.#root.querySelectorAll('details')) {
      fold.hidden = !fold.querySelector('data')
    }
  }

  #rows(answer: URLSearchParams): void {
    const table = this.#root.querySelector('table')
    const body = table?.tBodies[0]
    if (!table || !body) return
    // A column that this answer has no use for is not shown.
    const columns = [...table.querySelectorAll<HTMLElement>('th[data-column]')].filter((c) => {
      c.hidden = !answer.has(`row.1.${c.dataset['column']}`)
      return !c.hidden
    })
    const rows: HTMLElement[] = []
    for (let n = 1; columns.some((c) => answer.has(`row.${n}.${c.dataset['column']}`)); n++) {
      const row = document.createElement('tr')
      columns.forEach((column, i) => {
        const cell = document.createElement(i === 0 ? 'th' : 'td')
        if (i === 0) (cell as HTMLTableCellElement).scope = 'row'
        cell.dataset['label'] = column.textContent ?? ''
        if ('words' in column.dataset) cell.dataset['words'] = ''
        cell.textContent = answer.get(`row.${n}.${column.dataset['column']}`)
        row.append(cell)
      })
      rows.push(row)
    }
    body.replaceChildren(...rows)
    table.hidden = rows.length === 0
    part<HTMLElement>(this.#root, '[data-tool=save]').hidden = table.hidden
  }

  /** Links into the calculators that come next, with the numbers of this answer. */
  #next(answer: URLSearchParams): void {
    const list = part<HTMLElement>(this.#root, '[data-next]')
    const items: HTMLElement[] = []
    for (let n = 1; answer.has(`next.${n}.request`); n++) {
      const request = answer.get(`next.${n}.request`) ?? ''
      const link = make('a', '', answer.get(`next.${n}.words`) ?? '')
      link.href = `${this.#folder}${new URLSearchParams(request).get('calculator')}.html?${request}#calculator.0`
      items.push(make('li', '', link))
    }
    list.replaceChildren(...items)
    list.hidden = items.length === 0
  }

  /** Notes, cautions and judgements of this answer; those that are always said stand on the page. */
  #sayings(kind: string, answer: URLSearchParams): void {
    const always = new Set([...this.#section.querySelectorAll(`[data-always-${kind}]`)].map((e) => plainly(e.textContent ?? '')))
    const list = part<HTMLElement>(this.#section, `[data-list=${kind}]`)
    const items = answer
      .getAll(kind)
      .filter((text) => !always.has(plainly(text)))
      .map((text) => {
        const item = document.createElement('li')
        item.textContent = text
        return item
      })
    list.replaceChildren(...items)
    list.hidden = items.length === 0
    const frame = list.closest<HTMLElement>('[role=note]')
    if (frame) frame.hidden = list.hidden && always.size === 0
  }

  /** The drawing comes from our own code; anything but an SVG image is left out. */
  #drawing(text: string | null): void {
    const figure = part<HTMLElement>(this.#root, '[data-drawing]')
    const root = text && new DOMParser().parseFromString(text, 'image/svg+xml').documentElement
    const drawn = root && root.namespaceURI === svgSpace && root.localName === 'svg'
    figure.replaceChildren(...(drawn ? [document.importNode(root, true)] : []))
    figure.hidden = !drawn
  }
}

/** plainly gives words with plain spaces: a page binds numbers to their units. */
function plainly(words: string): string {
  return words.replace(/\s+/g, ' ').trim()
}
