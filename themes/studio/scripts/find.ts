// The page "Find": what is found stands below the box as one types. Without this
// script the page is the index of the book.
import * as words from '../words.yaml'
import { part } from './box'
import { taken } from './engine'
import { fold, stem } from './fold'
import { Lookup, type Head, type Place } from './lookup'
import { keepQuery, queried } from './query'
import { fill, make } from './say'

const atOnce = 20 // places shown, and added by "more"
const pause = 40 // ms after the last key
const rest = 300 // ms after which the address says what is looked for
const quiet = 700 // ms after which the count is said

const form = document.querySelector<HTMLFormElement>('[data-find]')
if (form) begin(form)

function begin(form: HTMLFormElement): void {
  const box = part<HTMLInputElement>(form, 'input')
  const found = part<HTMLElement>(document, '[data-found]')
  const list = part<HTMLElement>(found, '[data-found-list]')
  const more = part<HTMLButtonElement>(found, '[data-found-more]')
  const count = part<HTMLElement>(form, '[data-found-count]')
  let index: Promise<{ head: Head; lookup: Lookup }> | undefined
  let turn = 0 // of what is looked for; what comes later counts
  let later = 0
  let saying = 0
  let keeping = 0
  const stems = new Map<string, string>() // of words that were shown

  const stemOf = (word: string, head: Head): string => {
    let known = stems.get(word)
    if (known === undefined) stems.set(word, known = stem(fold(word), head))
    return known
  }

  /** opened reads the index when it is first wanted. */
  const opened = (): Promise<{ head: Head; lookup: Lookup }> => index ??= open(form).catch((fault: unknown) => {
    index = undefined
    throw fault
  })

  const say = (text: string): void => {
    clearTimeout(saying)
    saying = setTimeout(() => { if (count.textContent !== text) count.textContent = text }, quiet)
  }

  const look = async (): Promise<void> => {
    const mine = ++turn
    const typed = box.value.trim()
    clearTimeout(keeping)
    keeping = setTimeout(() => keepQuery(box.value.trim()), rest)
    if (typed === '') {
      found.hidden = true
      say('')
      return
    }
    const { head, lookup } = await opened()
    const { places, terms } = await lookup.find(box.value)
    const first = await Promise.all(places.slice(0, atOnce).map((n) => lookup.place(n)))
    if (mine !== turn) return
    // "Of" says nothing, though what it is made alike to may have been looked for: "off".
    const looked = (word: string): boolean => terms.has(stemOf(word, head)) && !head.passed.includes(fold(word))
    const row = (place: Place): HTMLElement => shown(place, looked)
    list.replaceChildren(...first.map(row))
    found.hidden = first.length === 0
    say(first.length > 0 ? fill(words['find-count'], places.length) : words['find-none'] ?? '')
    more.hidden = places.length <= atOnce
    more.onclick = async (): Promise<void> => {
      const from = list.childElementCount
      const next = await Promise.all(places.slice(from, from + atOnce).map((n) => lookup.place(n)))
      list.append(...next.map(row))
      more.hidden = places.length <= from + atOnce
      list.children[from]?.querySelector('a')?.focus()
    }
  }

  const start = (): void => void look().catch(() => say(words['find-failed'] ?? ''))
  list.addEventListener('click', () => keepQuery(box.value.trim()))
  form.hidden = false
  box.value = queried()
  box.addEventListener('input', () => {
    clearTimeout(later)
    later = setTimeout(start, pause)
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    start()
  })
  if (location.hash === '') box.focus()
  if (box.value !== '') start()
  else opened().catch(() => undefined)
}

/** open reads the head of the index. */
async function open(form: HTMLElement): Promise<{ head: Head; lookup: Lookup }> {
  const { find = '', findCarried = '' } = form.dataset
  const folder = find.slice(0, find.lastIndexOf('/') + 1)
  const head = JSON.parse(new TextDecoder().decode(await taken(find, findCarried))) as Head
  return { head, lookup: new Lookup(head, ({ packed, carried }) => taken(folder + packed, folder + carried)) }
}

/** shown is a place as a line of what was found. */
function shown({ name, part, number, address, line, kind }: Place, looked: (word: string) => boolean): HTMLElement {
  const link = make('a', '', ...marked(part ? `${name}: ${part}` : name, looked))
  link.href = address
  const about = make('span', '', number ? `${kind} ${number}` : kind)
  return make('li', '', link, about, make('p', '', ...marked(line, looked)))
}

/** marked puts the words that were looked for in marks. */
function marked(text: string, looked: (word: string) => boolean): (string | Node)[] {
  return text.split(/([\p{L}\p{M}\p{Nd}'’]+)/u).filter((piece) => piece !== '').map((piece) => (/[\p{L}\p{Nd}]/u.test(piece) && looked(piece) ? make('mark', '', piece) : piece))
}
