// What a form shows of an answer: numbers, rows, drawing, notes and cautions.
import { part } from './box'

/** Rows shows the rows of an answer in its own way. */
export type Rows = (root: HTMLElement, answer: URLSearchParams) => void

const svgSpace = 'http://www.w3.org/2000/svg'

export class AnswerView {
  readonly #root: HTMLElement
  readonly #outputs: HTMLOutputElement[]
  readonly #section: HTMLElement

  readonly #others: Rows | undefined

  /** section is the calculator's whole part of the page; others shows what is no table. */
  constructor(section: HTMLElement, others?: Rows) {
    this.#section = section
    this.#others = others
    this.#root = part(section, '[data-answers]')
    this.#outputs = [...section.querySelectorAll('output')]
  }

  clear(): void {
    this.show(new URLSearchParams())
  }

  show(answer: URLSearchParams): void {
    this.#numbers(answer)
    this.#rows(answer)
    this.#others?.(this.#root, answer)
    this.#sayings('note', answer)
    this.#sayings('caution', answer)
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

  /** Notes and cautions of this answer; those that are always said stand on the page. */
  #sayings(kind: string, answer: URLSearchParams): void {
    const always = new Set([...this.#section.querySelectorAll(`[data-always-${kind}]`)].map((e) => plainly(e.textContent ?? '')))
    const list = part<HTMLElement>(this.#section, `[data-${kind}s]`)
    const items = answer
      .getAll(kind)
      .filter((text) => !always.has(plainly(text)))
      .map((text) => {
        const item = document.createElement('li')
        item.textContent = text
        return item
      })
    list.replaceChildren(...items)
    const frame = list.closest<HTMLElement>('[role=note]') ?? list
    frame.hidden = items.length === 0
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
