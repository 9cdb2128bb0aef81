// The layers of a plan: a row of two choosers each, a medium and how it is
// worked. What is chosen is written, in words, into the text box that every
// input has; so the address, the engine and the rest of the form know nothing
// of choosers. Words that no chooser holds stay in the text box, in sight.
import * as words from '../words.yaml'
import { Box, part } from './box'
import { fill } from './say'

/** What one row says. */
interface Layer {
  readonly medium: string
  readonly technique: string
}

/** Words that may stand anywhere in a layer and say nothing. */
const small = ['a', 'an', 'the', 'by', 'with', 'in', 'on', 'of', 'and']

function parts(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []
}

/** find gives the option with the longest name that stands in the words, and the other words. */
function find(options: readonly HTMLOptionElement[], said: readonly string[]): [HTMLOptionElement, string[]] | undefined {
  let found: [HTMLOptionElement, string[]] | undefined
  let longest = 0
  for (const option of options) {
    for (const name of [option.text, ...(option.dataset['words'] ?? '').split('|')]) {
      const phrase = parts(name)
      const at = said.findIndex((_, n) => phrase.length > 0 && phrase.every((word, k) => said[n + k] === word))
      if (at < 0 || phrase.length <= longest) continue
      longest = phrase.length
      found = [option, [...said.slice(0, at), ...said.slice(at + phrase.length)]]
    }
  }
  return found
}

/** fits says whether a technique is for a medium. */
function fits(technique: HTMLOptionElement, medium: HTMLOptionElement | undefined): boolean {
  const only = technique.dataset['fits'] ?? ''
  return only === '' || technique.value === '' || only.split(' ').includes(medium?.dataset['fits'] ?? '')
}

export class LayersBox extends Box {
  readonly #rows: HTMLElement
  readonly #parts: HTMLElement[] // shown while choosers can say it
  readonly #written: HTMLElement // shown while only words can
  readonly #text: HTMLInputElement
  readonly #blank: HTMLElement // a row to copy
  readonly #media: readonly HTMLOptionElement[]
  readonly #techniques: readonly HTMLOptionElement[]
  readonly #most: number

  constructor(root: HTMLElement) {
    super(root)
    this.#parts = [...root.querySelectorAll<HTMLElement>('[data-rows]')]
    this.#rows = part(root, 'ol')
    this.#written = part(root, 'p[data-words]')
    this.#text = part(root, 'input')
    const row = part<HTMLElement>(root, 'li')
    this.#media = [...part<HTMLSelectElement>(row, '[data-medium]').options]
    this.#techniques = [...part<HTMLSelectElement>(row, '[data-technique]').options]
    this.#blank = row.cloneNode(true) as HTMLElement
    this.#most = Number(root.dataset['layers'])
    this.#rows.addEventListener('input', () => this.#write())
    part(root, '[data-more]').addEventListener('click', () => this.#row()?.querySelector('select')?.focus())
    part(root, '[data-less]').addEventListener('click', () => this.#drop())
    this.#spread()
  }

  override take(request: URLSearchParams): void {
    const joined = new URLSearchParams(request)
    const texts = request.getAll(this.name)
    if (texts.length > 0) joined.set(this.name, texts.join(', '))
    super.take(joined)
    this.#spread()
  }

  override trim(): void {
    super.trim()
    if (this.#text.value !== this.#said()) this.#spread()
  }

  /** The rows in words, as the engine understands them. */
  #said(): string {
    const said = [...this.#rows.children].map((row) => {
      const [medium, technique] = [...row.querySelectorAll('select')].map((s) => s.value)
      return medium && technique ? `${medium} by ${technique}` : medium
    })
    return said.filter((s) => s).join(', ')
  }

  /** Writes what is chosen into the text box. A technique that does not fit its medium goes. */
  #write(): void {
    for (const row of this.#rows.children) this.#offer(row)
    this.#text.value = this.#said()
  }

  /** Offers the techniques that fit the row's medium. */
  #offer(row: Element): void {
    const medium = part<HTMLSelectElement>(row, '[data-medium]')
    const technique = part<HTMLSelectElement>(row, '[data-technique]')
    const chosen = technique.value
    const meant = this.#media[medium.selectedIndex]
    technique.replaceChildren(...this.#techniques.filter((t) => fits(t, meant)).map((t) => t.cloneNode(true)))
    technique.value = chosen
    if (technique.selectedIndex < 0) technique.selectedIndex = 0
  }

  #row(): HTMLElement | undefined {
    const count = this.#rows.children.length
    if (count >= this.#most) return undefined
    const row = this.#blank.cloneNode(true) as HTMLElement
    part(row, '[data-medium]').setAttribute('aria-label', fill(words['calculator-layer-medium'], count + 1))
    part(row, '[data-technique]').setAttribute('aria-label', fill(words['calculator-layer-technique'], count + 1))
    this.#rows.append(row)
    this.#offer(row)
    return row
  }

  #drop(): void {
    this.#rows.lastElementChild?.remove()
    if (!this.#rows.firstElementChild) this.#row()
    this.#write()
    this.#text.dispatchEvent(new Event('input', { bubbles: true }))
  }

  /** Shows the text box's words as rows, or, where they hold more than rows can, as they are. */
  #spread(): void {
    const wanted = this.#text.value.split(/[,;]/).filter((piece) => parts(piece).length > 0)
    const layers = wanted.map((piece) => this.#understood(piece))
    const whole = layers.length <= this.#most && layers.every((layer) => layer)
    for (const shown of this.#parts) shown.hidden = !whole
    this.#written.hidden = whole
    this.#rows.replaceChildren()
    for (const layer of whole ? layers : []) {
      const row = this.#row()
      if (!row || !layer) continue
      part<HTMLSelectElement>(row, '[data-medium]').value = layer.medium
      this.#offer(row)
      part<HTMLSelectElement>(row, '[data-technique]').value = layer.technique
    }
    if (layers.length === 0) this.#row()
  }

  #understood(piece: string): Layer | undefined {
    const medium = find(this.#media.slice(1), parts(piece))
    if (!medium) return undefined
    const useful = (list: readonly string[]): string[] => list.filter((word) => !small.includes(word))
    const rest = useful(medium[1])
    if (rest.length === 0) return { medium: medium[0].value, technique: '' }
    const technique = find(this.#techniques.slice(1), medium[1]) ?? find(this.#techniques.slice(1), rest)
    if (!technique || useful(technique[1]).length > 0 || !fits(technique[0], medium[0])) return undefined
    return { medium: medium[0].value, technique: technique[0].value }
  }
}
