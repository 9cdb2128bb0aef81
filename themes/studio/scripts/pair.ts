// Two tiles side by side: a table with a column for each, filled with what hangs on
// the wall. The first that is taken waits in a bar at the bottom of the window; the
// second opens the table, and closing it leads back to where the reader was.
import * as words from '../words.yaml'
import { part } from './box'
import { differ, together } from './narrow'
import { fill } from './say'

export class Pair {
  codes: readonly string[] = []
  readonly #tiles: ReadonlyMap<string, HTMLElement> // by code
  readonly #section = part<HTMLElement>(document, '[data-pair]')
  readonly #bar = part<HTMLElement>(document, '[data-chosen]')
  readonly #heard = part<HTMLElement>(document, '[data-heard]') // what a screen reader says
  readonly #changed: () => void
  #last: HTMLElement | undefined // the button that was pressed last

  /** changed is called whenever another pair is chosen. */
  constructor(tiles: ReadonlyMap<string, HTMLElement>, changed: () => void) {
    this.#tiles = tiles
    this.#changed = changed
    for (const [code, tile] of tiles) {
      const button = buttonOf(tile)
      button.hidden = false
      button.addEventListener('click', () => this.#press(code, button))
    }
    part(this.#section, '[data-apart]').addEventListener('click', () => this.#away())
    part(this.#bar, 'button').addEventListener('click', () => this.#away())
  }

  /** Shows a pair without saying so, as the address has it. */
  show(codes: readonly string[]): void {
    this.codes = codes
    for (const [code, tile] of this.#tiles) buttonOf(tile).setAttribute('aria-pressed', String(codes.includes(code)))
    const [one, other] = codes.map((code) => this.#tiles.get(code))
    part(this.#bar, 'p').textContent = this.#words
    this.#bar.hidden = codes.length !== 1
    this.#section.hidden = !one || !other
    if (one && other) this.#compare(one, other)
  }

  #press(code: string, button: HTMLElement): void {
    this.#last = button
    this.show(together(this.codes, code))
    this.#heard.textContent = this.#words
    this.#changed()
    if (this.codes.length < 2) return
    const name = part<HTMLElement>(this.#section, 'h2')
    name.focus({ preventScroll: true })
    name.scrollIntoView({ block: 'start' })
  }

  /** Puts everything back, and leads to where the reader was. */
  #away(): void {
    const [code = ''] = this.codes.slice(-1)
    const tile = this.#tiles.get(code)
    this.show([])
    this.#heard.textContent = this.#words
    this.#changed()
    const back = this.#last ?? (tile && buttonOf(tile))
    if (back && !back.closest('[hidden]')) back.focus()
    else part<HTMLElement>(document, 'main').focus()
  }

  get #words(): string {
    const [one = '', other = ''] = this.codes
    if (other !== '') return fill(words['wall-together'], one, other)
    return one === '' ? words['wall-back'] ?? '' : fill(words['wall-chosen'], one)
  }

  #compare(one: HTMLElement, other: HTMLElement): void {
    const tiles = [one, other]
    this.#section.querySelectorAll('thead th').forEach((head, n) => head.replaceChildren(...headOf(tiles[n])))
    for (const row of this.#section.querySelectorAll<HTMLElement>('[data-compared]')) {
      const facts = tiles.map((tile) => tile.querySelector(`[data-fact="${row.dataset['compared'] ?? ''}"] dd`))
      row.hidden = facts.every((fact) => !fact)
      const texts = [...row.querySelectorAll('td')].map((cell, n) => {
        cell.replaceChildren(...(facts[n]?.cloneNode(true).childNodes ?? [words['wall-unsaid'] ?? '']))
        return cell.textContent ?? ''
      })
      row.querySelector('[data-differs]')?.remove()
      if (differ(texts[0] ?? '', texts[1] ?? '')) part(row, 'th').append(mark())
    }
  }
}

/** mark is the word that stands beside what differs. */
function mark(): HTMLElement {
  const made = document.createElement('b')
  made.dataset['differs'] = ''
  made.textContent = ` ${words['wall-differs'] ?? ''}`
  return made
}

/** headOf is what stands over the column of a tile: what it looks like, and the way to where it hangs. */
function headOf(tile: HTMLElement | undefined): Node[] {
  if (!tile) return []
  const way = document.createElement('a')
  way.href = `#${tile.id}`
  way.textContent = fill(words['wall-tile'], tile.dataset['tile'] ?? '')
  return [part(tile, '[data-look]').cloneNode(true), way]
}

function buttonOf(tile: HTMLElement): HTMLButtonElement {
  return part(tile, '[data-beside]')
}
