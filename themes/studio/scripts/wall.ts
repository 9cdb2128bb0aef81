// The wall of test tiles: what is shown of it is chosen, and two tiles can be put
// side by side. Without this script all of it hangs there, and nothing is offered.
import * as words from '../words.yaml'
import { part } from './box'
import { chosenIn, facets, fits, leaves, pairIn, queryOf, type Choice, type Facet, type Facts } from './narrow'
import { Pair } from './pair'
import { fill } from './say'

/** Tile is one that hangs there. */
interface Tile extends Facts {
  readonly element: HTMLElement
}

const tiles = [...document.querySelectorAll<HTMLElement>('[data-tile]')].map(read)
const form = document.querySelector<HTMLFormElement>('[data-narrow]')
const pair = new Pair(new Map(tiles.map(({ element }) => [element.dataset['tile'] ?? '', element])), keep)
let choice: Choice = {}

function read(element: HTMLElement): Tile {
  const { tileBody: body = '', tileCoats: coats = '', tileClear: clear = '', tilePlace: place = '' } = element.dataset
  return { element, body, coats, clear, place }
}

/** chooser is the select of a facet; none where there is nothing to choose. */
function chooser(facet: Facet): HTMLSelectElement | undefined {
  const found = form?.elements.namedItem(facet)
  return found instanceof HTMLSelectElement ? found : undefined
}

/** narrow shows what fits a choice, and offers what would leave something. */
function narrow(wanted: Choice, aloud: boolean): void {
  choice = wanted
  const whole = Object.keys(choice).length === 0
  const left = tiles.filter((tile) => fits(tile, choice))
  const shown = new Set<Element | null>(left.map((tile) => tile.element))
  for (const hook of document.querySelectorAll<HTMLElement>('[data-hook]')) hook.hidden = !whole && !shown.has(hook.querySelector('[data-tile]'))
  for (const row of document.querySelectorAll<HTMLElement>('[data-wall-row]')) row.hidden = !row.querySelector('[data-hook]:not([hidden])')
  for (const facet of facets) {
    const select = chooser(facet)
    if (!select) continue
    select.value = choice[facet] ?? ''
    for (const option of select.options) option.disabled = option.value !== '' && !option.selected && !leaves(tiles, choice, facet, option.value)
  }
  if (aloud || !whole) part(document, '[data-left]').textContent = told(whole, left.length)
}

/** told says how many tiles are left, and of what, for whoever prints them. */
function told(whole: boolean, left: number): string {
  if (whole) return fill(words['wall-left-all'], tiles.length)
  if (left === 0) return fill(words['wall-left-none'], tiles.length)
  const what = facets.map((facet) => chooser(facet)).filter((select) => select && select.value !== '')
    .map((select) => `${select?.labels[0]?.textContent ?? ''}: ${select?.selectedOptions[0]?.textContent ?? ''}`)
  return `${fill(words['wall-left'], left, tiles.length)} ${what.join('; ')}.`
}

/** keep writes what is shown into the page's address. Some browsers refuse for pages opened as files. */
function keep(): void {
  try {
    history.replaceState(null, '', location.pathname + queryOf(choice, pair.codes) + location.hash)
  } catch {
    return
  }
}

/** choose takes what stands in the selects. */
function choose(): void {
  const wanted: Partial<Record<Facet, string>> = {}
  for (const facet of facets) {
    const value = chooser(facet)?.value ?? ''
    if (value !== '') wanted[facet] = value
  }
  narrow(wanted, true)
  keep()
}

function all(): void {
  narrow({}, true)
  keep()
}

/** arrive shows the whole wall to whoever was sent to a tile that is not shown. */
function arrive(): void {
  const meant = document.getElementById(location.hash.slice(1)) // while the page is read nothing is :target yet
  if (!meant?.closest('[hidden]')) return
  all()
  meant.scrollIntoView()
}

const today = new Date().toISOString().slice(0, 'yyyy-mm-dd'.length)
for (const again of document.querySelectorAll<HTMLElement>('[data-again]')) {
  if ((again.dataset['again'] ?? '') < today) again.hidden = false // since it was published
}
pair.show(pairIn(location.search, tiles.map(({ element }) => element.dataset['tile'] ?? '')))
narrow(chosenIn(location.search, tiles), false)
if (form) {
  form.hidden = false
  form.addEventListener('change', choose)
  form.addEventListener('submit', (event) => event.preventDefault())
  part(form, '[data-show-all]').addEventListener('click', all)
}
addEventListener('hashchange', arrive)
arrive()
