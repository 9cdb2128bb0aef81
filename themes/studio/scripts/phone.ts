// What keeps the handbook on this phone, once a page and its calculators have come: it
// registers the service worker, tells quietly that the handbook is ready or that there
// is a new edition, takes the page along when that begins, and fills the page "On this
// phone".
import * as words from '../words.yaml'
import { part } from './box'
import { choice, choose } from './choice'
import { isOf } from './edition'
import type { Asked, Failure, News, State, Told } from './messages'
import { dress } from './run'
import { button, fill, make } from './say'

const root = new URL('..', (document.currentScript as HTMLScriptElement).src) // of the handbook: shared files stand in a folder of it
const worker = new URL('sw.js', root).href // which keeps what is below it
const language = document.documentElement.lang
const megabytes = (bytes: number): string => (bytes / 1e6).toLocaleString(language, { maximumFractionDigits: 1 })

const section = document.querySelector<HTMLElement>('[data-kept]') // only on the page "On this phone"

/** ask says something to a worker. */
function ask(to: ServiceWorker | null | undefined, asked: Asked): void {
  to?.postMessage(asked)
}

/** registered is what keeps this handbook, and not one of a folder above. */
async function registered(): Promise<ServiceWorkerRegistration | undefined> {
  const found = await navigator.serviceWorker.getRegistration(root)
  return found?.scope === root.href ? found : undefined
}

/** over lets the new edition begin; then every open page loads anew. */
async function over(): Promise<void> {
  ask((await registered())?.waiting, { ask: 'over' })
}

// The line at the foot of the window.

const later = 12 * 60 * 60 * 1000 // milliseconds until a new edition is told of again
const laterKey = `slipbook.later:${root.pathname}`

function putOff(): boolean {
  try {
    return Date.now() - Number(localStorage.getItem(laterKey) ?? 0) < later
  } catch {
    return false
  }
}

function putItOff(): void {
  try {
    localStorage.setItem(laterKey, String(Date.now()))
  } catch {
    return
  }
}

let line: HTMLElement | undefined

/** show shows a line with what can be done about it, until it is put away. */
function show(text: string | undefined, keys: readonly [string | undefined, () => void][]): HTMLElement {
  line?.remove()
  const said = make('p', '') // a screen reader hears words that come into a place that was there
  said.setAttribute('role', 'status')
  const shown = line = make('aside', 'news', said, ...keys.map(([name, press]) => button(name, () => {
    shown.remove()
    press()
  })))
  shown.setAttribute('aria-label', words['phone'] ?? '')
  document.body.append(shown)
  setTimeout(() => said.append(text ?? ''), 100)
  return shown
}

const enough = 20_000 // milliseconds that good news stays, unless somebody is at it

async function news(what: News): Promise<void> {
  if (section) return look() // the page tells it all
  if (what === 'new' && putOff()) return
  const style = document.querySelector<HTMLElement>('[data-phone-style]')?.dataset['phoneStyle']
  if (style) await dress(style)
  if (what === 'new') return void show(words['phone-new'], [[words['phone-new-yes'], () => void over()], [words['phone-new-later'], putItOff]])
  const shown = show(what === 'part' ? words['phone-ready-part'] : words['phone-ready'], [[words['phone-close'], () => undefined]])
  setTimeout(() => shown.matches(':focus-within') || shown.remove(), enough)
}

// The page "On this phone".

/** say says how things stand, and offers what can be done. */
function say(text: string | undefined, ...keys: (HTMLElement | undefined)[]): void {
  if (!section) return
  const at = part(section, '[data-state]')
  if (at.textContent !== text) at.textContent = text ?? ''
  part(section, '[data-keys]').replaceChildren(...keys.filter((key) => key !== undefined))
}

const takeKey = (name: string | undefined): HTMLElement => button(name, () => void takeIt())

/** takeIt takes the handbook, or what is left of it to take. */
async function takeIt(): Promise<void> {
  choose(root, 'yes')
  say(words['phone-begins'])
  try {
    const registration = await navigator.serviceWorker.register(worker)
    if (registration.active && !registration.installing) await registration.update()
    if (registration.active && !registration.installing) ask(registration.active, { ask: 'take' })
  } catch {
    fails('network')
  }
}

/** askToDrop asks first: it takes the network to have the handbook again. */
function askToDrop(): void {
  const stay = button(words['phone-drop-keep'], () => void look())
  say(words['phone-drop-ask'], stay, button(words['phone-drop-yes'], () => void dropIt()))
  stay.focus()
}

/** dropIt leaves nothing on this phone but the note not to take it again. */
async function dropIt(): Promise<void> {
  choose(root, 'no')
  const registration = await registered()
  for (const w of [registration?.installing, registration?.waiting, registration?.active]) ask(w, { ask: 'drop' })
  await registration?.unregister()
  for (const name of await caches.keys()) if (isOf(root, name)) await caches.delete(name)
  await look()
}

const failures: Readonly<Record<Failure, string | undefined>> = {
  network: words['phone-failed-network'], bytes: words['phone-failed-bytes'], room: words['phone-failed-room'],
}

function fails(why: Failure): void {
  say(failures[why], takeKey(words['phone-again']))
}

/** tellState says what is here of an edition. */
async function tellState(state: State): Promise<void> {
  const { kept, all } = state
  const day = new Date(state.taken).toLocaleDateString(language, { dateStyle: 'long' })
  const text = state.whole
    ? fill(words['phone-kept'], kept.pages, megabytes(kept.bytes), state.edition, day)
    : fill(words['phone-kept-part'], kept.pages, all.pages, megabytes(kept.bytes), state.edition, day)
  const fresh = (await registered())?.waiting
  say(fresh ? `${text} ${words['phone-new'] ?? ''}` : text,
    fresh ? button(words['phone-new-yes'], () => void over()) : undefined, button(words['phone-drop'], askToDrop))
  offerUnits(state)
}

/** offerUnits lets units of a large handbook be chosen. */
function offerUnits(state: State): void {
  if (!section) return
  part<HTMLElement>(section, '[data-units]').hidden = state.whole
  const boxes = [...section.querySelectorAll<HTMLInputElement>('input')]
  for (const unit of state.units) {
    const box = boxes.find((b) => b.value === unit.id)
    if (!box) continue
    box.checked = unit.chosen
    box.onchange = async () => ask((await registered())?.active, { ask: 'units', units: boxes.filter((b) => b.checked).map((b) => b.value) })
    part(section, `[data-unit-room="${CSS.escape(unit.id)}"]`).textContent = fill(unit.here ? words['phone-unit-here'] : words['phone-unit'], unit.pages, megabytes(unit.bytes))
  }
}

/** look finds out how things stand, and says it. */
async function look(): Promise<void> {
  if (!section) return
  if (location.protocol === 'file:') return say(words['phone-folder'])
  if (!isSecureContext) return say(words['phone-plain'])
  if (!('serviceWorker' in navigator)) return say(words['phone-browser'])
  const registration = await registered()
  if (choice(root) === 'no') {
    part<HTMLElement>(section, '[data-units]').hidden = true
    return say(words['phone-dropped'], takeKey(words['phone-take']))
  }
  if (registration?.active) return ask(registration.active, { ask: 'state' })
  if (registration?.installing) return say(words['phone-begins'])
  say(words['phone-nothing'], takeKey(words['phone-take']))
}

/** listen hears what workers tell. */
function listen(): void {
  const hear = async ({ news: what, state, taking, failed }: Told): Promise<void> => {
    if (choice(root) === 'no') return
    if (what) await news(what)
    if (taking) say(fill(words['phone-taking'], ...taking))
    if (state) await tellState(state)
    if (state === null) say(words['phone-nothing'], takeKey(words['phone-take']))
    if (failed) fails(failed)
  }
  navigator.serviceWorker.addEventListener('message', ({ data }) => void hear(data as Told))
}

/** missed says which page the reader wanted that is not here. */
function missed(): void {
  const wanted = new URLSearchParams(location.search).get('away')
  const to = wanted === null ? undefined : new URL(wanted, root)
  if (!section || !to?.href.startsWith(root.href)) return
  const link = make('a', '', fill(words['phone-away-again'], wanted ?? ''))
  link.href = to.href
  const at = part<HTMLElement>(section, '[data-away]')
  at.hidden = false
  at.append(words['phone-away'] ?? '', ' ', link)
}

// Every page.

/** keep has the phone keep the handbook, unless the reader dropped it, or has the browser save data and did not ask for it. */
async function keep(): Promise<void> {
  const sparing = (navigator as { connection?: { saveData?: boolean } }).connection?.saveData
  const wish = choice(root)
  if (wish === 'no' || (sparing && wish !== 'yes')) return
  const registration = await navigator.serviceWorker.register(worker)
  const watch = (): void => {
    if (registration.waiting && registration.active) void news('new')
    const { installing } = registration
    if (!installing) return
    installing.onstatechange = () => {
      watch()
      // A browser ends what takes too long; the next try goes on from there.
      if (installing.state === 'redundant' && !registration.active && tries-- > 0) setTimeout(keepAgain, pause)
    }
  }
  watch()
  registration.onupdatefound = watch
}

const pause = 60_000 // milliseconds
let tries = 5

// Where it fails nothing is kept, and the page about that says so.
const keepAgain = (): Promise<void> => keep().catch(() => undefined)

/** follow takes this page along to an edition that begins. What was typed stands in its address. */
function follow(): void {
  let held = navigator.serviceWorker.controller
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (held) location.reload()
    held = navigator.serviceWorker.controller
  })
}

if ('serviceWorker' in navigator && location.protocol !== 'file:') {
  follow()
  listen()
  void keepAgain().then(look)
} else void look()
if (section) missed()
