// The box over a page of entries: as one types, those without the words are put out of
// sight. Where names have the words, others that only tell of them come when asked for.
import * as words from '../words.yaml'
import { part } from './box'
import { Entries, rulesOf } from './entries'
import { keepQuery, queried, query } from './query'
import { fill } from './say'

const pause = 40 // ms after the last key
const rest = 300 // ms after which the address says what is looked for
const quiet = 700 // ms after which the count is said

const form = document.querySelector<HTMLFormElement>('[data-filter]')
if (form) begin(form)

function begin(form: HTMLFormElement): void {
  const box = part<HTMLInputElement>(form, 'input')
  const count = part<HTMLElement>(form, '[data-filter-count]')
  const clear = part<HTMLElement>(form, '[data-filter-clear]')
  const more = part<HTMLElement>(form, '[data-filter-more]')
  const none = part<HTMLElement>(form, '[data-filter-none]')
  const entries = [...document.querySelectorAll<HTMLElement>('[data-entry]')]
  const groups = [...document.querySelectorAll<HTMLElement>('[data-entries]')]
  const wholes = document.querySelectorAll<HTMLElement>('[data-whole]')
  let known: Entries | undefined
  let [later, keeping, saying] = [0, 0, 0]

  /** read takes the words of the page when they are first wanted. */
  const read = (): Entries => known ??= new Entries(entries.map((entry) => ({
    name: [...entry.querySelectorAll('[data-entry-name]')].map((name) => name.textContent ?? '').join(' '),
    text: entry.textContent ?? '',
  })), rulesOf(words['find-passed-over'], words['find-endings']))

  const say = (text: string): void => {
    clearTimeout(saying)
    saying = setTimeout(() => { if (count.textContent !== text) count.textContent = text }, text === '' ? 0 : quiet)
  }

  /** show leaves the entries that have the words; all has those too that only tell of them. */
  const show = (all = false): void => {
    const found = read().find(box.value)
    const left = new Set(found && (found.named.length === 0 || all ? [...found.named, ...found.told] : found.named))
    const others = found && left.size > 0 && !all && found.named.length > 0 ? found.told.length : 0
    entries.forEach((entry, n) => { entry.hidden = found !== undefined && !left.has(n) })
    for (const group of groups) group.hidden = [...group.querySelectorAll<HTMLElement>('[data-entry]')].every((entry) => entry.hidden)
    for (const whole of wholes) whole.hidden = found !== undefined
    clear.hidden = box.value === ''
    more.hidden = others === 0
    more.textContent = fill(words['filter-more'], others)
    none.hidden = !found || left.size > 0
    const link = part<HTMLAnchorElement>(none, 'a')
    link.search = query(box.value.trim())
    say(!found ? '' : left.size > 0 ? fill(words['filter-count'], left.size, entries.length) : words['filter-count-none'] ?? '')
  }

  const empty = (): void => {
    clearTimeout(later)
    box.value = ''
    show()
    keepQuery('')
  }

  /** reach leads to what the address names, though the words had put it out of sight. */
  const reach = (): void => {
    const to = document.getElementById(decodeURIComponent(location.hash.slice(1)))
    if (!to?.closest('[hidden]')) return
    empty()
    to.scrollIntoView()
  }

  form.hidden = false
  box.value = queried()
  box.addEventListener('focus', () => setTimeout(read), { once: true })
  box.addEventListener('input', () => {
    clearTimeout(later)
    later = setTimeout(show, pause)
    clearTimeout(keeping)
    keeping = setTimeout(() => keepQuery(box.value.trim()), rest)
  })
  box.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || box.value === '') return
    event.preventDefault()
    empty()
  })
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    clearTimeout(later)
    show()
    box.blur() // a phone's keys leave the screen to what is found
  })
  clear.addEventListener('click', () => {
    empty()
    box.focus()
  })
  more.addEventListener('click', () => {
    const others = entries.filter((entry) => entry.hidden)
    show(true)
    const first = others.find((entry) => !entry.hidden)
    if (first) first.tabIndex = -1
    first?.focus()
  })
  addEventListener('hashchange', reach)
  if (box.value !== '') show()
  reach()
}
