// One step to a screen. What is shown are the very elements of the page: all others
// are put out of sight, so that links and calculators work on, and no words exist
// twice. The place, the ticks and the timers are kept on this phone.
import * as words from '../words.yaml'
import { awake } from './awake'
import { isField } from './box'
import { button, fill, make, offer } from './say'
import { groups, type Group, type Kind } from './stepgroups'
import { keepPlace, recallPlace, type Place } from './stepkept'
import { keyOf, showPlace, stepsOf } from './stepticks'
import { Timers } from './steptimers'
import { said, waitsOf } from './timer'

/** Want is what is asked for; "again" is what there was before a reload. */
export type Want = 'open' | 'again' | 'clear'

declare global {
  /** Set by this script, called by that of the lesson. */
  var atStep: ((want: Want) => void) | undefined
}

const shineAgain = 3 * 60 // seconds after which to look again for a shine
const stateAgain = 30 * 60 // and for a state of the clay

class StepView {
  readonly #way: HTMLElement // at the top of the lesson
  readonly #main: HTMLElement
  readonly #steps = stepsOf()
  readonly #elements: HTMLElement[] = [] // of the lesson's words, in order
  readonly #groups: Group[]
  readonly #timers: Timers
  readonly #place = make('span', 'step-place')
  readonly #head: HTMLElement
  readonly #keys: HTMLElement
  readonly #back: HTMLButtonElement
  readonly #next: HTMLButtonElement
  readonly #foot: HTMLElement
  readonly #tools = make('div', 'step-tools') // what belongs to the step in sight
  readonly #cleared = offer()
  readonly #moved: [HTMLElement, Comment][] = [] // from where they stand on the page
  #at = 0
  #open = false
  #ticks: Set<string>
  #hash = '' // its fragment when the step view was opened
  #address = '' // that of the page, with the numbers of its calculators

  constructor(way: HTMLElement) {
    this.#way = way
    this.#main = way.closest('main') ?? document.body
    this.#groups = groups(this.#gather())
    const kept = recallPlace()
    this.#ticks = new Set(kept?.ticks)
    this.#at = this.#start(kept)
    this.#timers = new Timers(kept, (key) => this.#steps.findIndex((step) => keyOf(step) === key) + 1, () => this.#keep())
    this.#head = make('p', 'step-head', button(words['step-leave'], () => this.leave()), this.#place)
    this.#back = button(words['step-back'], () => this.#go(this.#at - 1))
    this.#next = button(words['step-next'], () => this.#at + 1 < this.#steps.length ? this.#go(this.#at + 1) : this.leave())
    this.#next.className = 'step-on'
    this.#keys = make('p', 'step-keys', this.#back, this.#next)
    this.#cleared.classList.add('step-offer')
    this.#foot = make('div', 'step-foot', this.#timers.element)
    this.#main.append(this.#foot)
    addEventListener('popstate', () => {
      if (this.#open && !stepState()) this.#close()
      else if (!this.#open && stepState()) this.open(false)
    })
    this.#main.addEventListener('click', (event) => this.#follow(event))
    document.addEventListener('keydown', (event) => this.#key(event))
    this.#main.addEventListener('input', () => setTimeout(() => (this.#address = location.href), 100))
  }

  /** Finds what each element of the lesson's own words is. */
  #gather(): Kind[] {
    const kinds: Kind[] = []
    const put = (element: Element, kind: Kind): void => {
      this.#elements.push(element as HTMLElement)
      kinds.push(kind)
    }
    for (let e = this.#main.querySelector('[data-lead]')?.nextElementSibling; e && !e.matches('[data-tail], [role=doc-endnotes], nav'); e = e.nextElementSibling) {
      const steps = e.querySelectorAll(':scope > [data-step-key]')
      if (steps.length > 0) for (const step of steps) put(step, 'step')
      else if (e.matches('h2')) put(e, 'part')
      else if (e.matches('[role=note]')) put(e, 'caution')
      else if (e.matches('[data-section], [aria-labelledby^="recipe."]')) put(e, 'tool')
      else put(e, e.matches('[data-aside]') ? 'aside' : 'words')
    }
    return kinds
  }

  /** Where to begin: at the step that is kept, at that of the address, at the first without a tick. */
  #start(kept: Place | undefined): number {
    const first = (fits: (step: HTMLElement) => boolean): number => this.#steps.findIndex(fits)
    const ways = [first((step) => keyOf(step) === kept?.at), first((step) => `#${step.id}` === location.hash), first((step) => !this.#ticks.has(keyOf(step)))]
    return Math.max(0, ways.find((n) => n >= 0) ?? 0)
  }

  use(want: Want): void {
    if (want === 'clear') this.#clear()
    else if (want === 'open') this.open(true)
    else if (recallPlace()?.open) this.open(false)
    this.#timers.start()
  }

  /** Shows the step; pressed says that somebody asked for it now. */
  open(pressed: boolean): void {
    if (this.#open) return
    this.#open = true
    this.#address = location.href
    this.#hash = location.hash
    history.scrollRestoration = 'manual'
    if (pressed || !stepState()) history.pushState({ ...(history.state as object | null), step: true }, '', location.href)
    document.documentElement.classList.add('at-step')
    this.#main.prepend(this.#head)
    this.#foot.append(this.#keys)
    this.#cleared.remove()
    awake(true)
    this.#go(this.#at)
  }

  /** Goes back to the page as it was, by the browser's own way where there is one. */
  leave(): void {
    if (stepState()) history.back()
    else this.#close()
  }

  #close(): void {
    this.#open = false
    const away = location.hash !== this.#hash && document.getElementById(decodeURIComponent(location.hash.slice(1)))
    if (!away && location.href !== this.#address) history.replaceState(history.state, '', this.#address)
    document.documentElement.classList.remove('at-step')
    for (const part of [this.#head, this.#keys, this.#tools]) part.remove()
    this.#putBack()
    for (const element of [...this.#main.children, ...this.#elements]) element.classList.remove('step-away', 'step-held', 'step-now')
    awake(false)
    this.#keep()
    const step = this.#steps[this.#at]
    requestAnimationFrame(() => {
      history.scrollRestoration = 'auto'
      if (away) return away.scrollIntoView() // a link of the step leads elsewhere on the page
      step?.scrollIntoView({ block: 'center' })
      step?.querySelector<HTMLElement>('[data-number]')?.focus({ preventScroll: true })
    })
  }

  /** Shows one step with what belongs to it, from the top. */
  #go(to: number): void {
    const last = this.#steps.length - 1
    this.#at = Math.min(Math.max(0, to), last)
    const step = this.#steps[this.#at]
    const group = this.#groups[this.#at]
    if (!step || !group) return
    const whole = new Set<Element | undefined>([...group.shown, ...group.tools].map((n) => this.#elements[n]))
    const held = new Set<Element | undefined>(group.held.map((n) => this.#elements[n]))
    for (const element of this.#elements) {
      element.classList.toggle('step-away', !whole.has(element) && !held.has(element))
      element.classList.toggle('step-held', held.has(element))
    }
    for (const child of this.#main.children) {
      const own = child === this.#head || child === this.#foot || child.matches('h1')
      if (!own && !whole.has(child) && !held.has(child)) child.classList.toggle('step-away', !child.contains(step))
    }
    this.#putBack()
    for (const n of [...group.tools].reverse()) this.#move(this.#elements[n], step.parentElement)
    this.#show(step, [...whole].filter((element) => element?.matches('[role=note]')))
    this.#place.textContent = fill(words['step-place'], this.#at + 1, last + 1)
    this.#back.setAttribute('aria-disabled', String(this.#at === 0))
    this.#next.textContent = (this.#at === last ? words['step-finish'] : words['step-next']) ?? ''
    scrollTo({ top: 0, behavior: 'instant' })
    this.#keep()
  }

  /** Moves a calculator or a weighing order behind the step: the step is read first. */
  #move(tool: HTMLElement | undefined, behind: HTMLElement | null): void {
    if (!tool || !behind) return
    const home = document.createComment('')
    tool.before(home)
    this.#moved.push([tool, home])
    behind.after(tool)
  }

  #putBack(): void {
    for (const [tool, home] of this.#moved.splice(0)) home.replaceWith(tool)
  }

  /** Puts the tools of a step behind its words, and the focus on it; its cautions are told with it. */
  #show(step: HTMLElement, cautions: (Element | undefined)[]): void {
    for (const other of this.#steps) {
      other.classList.toggle('step-now', other === step)
      if (other !== step) for (const name of ['tabindex', 'aria-describedby']) other.removeAttribute(name)
    }
    const told = cautions.map((caution) => caution?.getAttribute('aria-labelledby') ?? '').join(' ').trim()
    this.#tools.replaceChildren(...this.#toolsOf(step))
    step.append(this.#tools)
    step.tabIndex = -1
    if (told !== '') step.setAttribute('aria-describedby', told)
    step.focus({ preventScroll: true })
  }

  #toolsOf(step: HTMLElement): Node[] {
    const { waits = '', until = '' } = step.dataset
    const tick = make('input', '')
    tick.type = 'checkbox'
    tick.checked = this.#ticks.has(keyOf(step))
    tick.addEventListener('change', () => this.#tick(step, tick.checked))
    const all: Node[] = []
    for (const { seconds, most } of waitsOf(waits)) {
      all.push(make('p', '', button(fill(words['step-start'], said(seconds)), () => this.#timers.add(keyOf(step), seconds))))
      if (most > 0) all.push(make('p', '', fill(words['step-range'], said(seconds), said(most))))
    }
    if (until !== '') all.push(this.#asked(step, until, waitsOf(waits)[0]?.seconds))
    return [...all, make('label', 'step-tick', tick, words['step-done'] ?? '')]
  }

  /** Asks whether what a step waits for is there: not yet starts a timer, yes goes on. */
  #asked(step: HTMLElement, until: string, seconds = until === 'shine' ? shineAgain : stateAgain): HTMLElement {
    const told = make('span', '')
    told.setAttribute('role', 'status')
    return make('p', 'step-asked', make('span', '', until === 'shine' ? words['step-shine'] : fill(words['step-until'], until)),
      button(words['step-not-yet'], () => {
        this.#timers.add(keyOf(step), seconds)
        told.textContent = fill(words['step-again'], said(seconds))
      }),
      button(words['step-yes'], () => {
        this.#tick(step, true)
        this.#go(this.#at + 1)
      }), told)
  }

  #tick(step: HTMLElement, on: boolean): void {
    if (on) this.#ticks.add(keyOf(step))
    else this.#ticks.delete(keyOf(step))
    this.#keep()
  }

  /** Takes all ticks back, and offers to undo that. */
  #clear(): void {
    const { ticks: before, at } = this.#kept
    const put = (ticks: readonly string[], to: number): void => {
      this.#ticks = new Set(ticks)
      this.#at = to
    }
    put([], 0)
    const back = button(words['step-bring-back'], () => {
      put(before, Math.max(0, this.#steps.findIndex((step) => keyOf(step) === at)))
      this.#cleared.remove()
      this.#keep()
      this.#way.querySelector<HTMLElement>('[data-go-on]')?.focus()
    })
    this.#cleared.replaceChildren(words['step-cleared'] ?? '', ' ', back)
    this.#way.after(this.#cleared)
    this.#keep()
    back.focus()
  }

  get #kept(): Place {
    return { at: keyOf(this.#steps[this.#at]), open: this.#open, ticks: [...this.#ticks], ...this.#timers.kept, name: this.#main.querySelector('h1')?.textContent ?? '', number: this.#at + 1 }
  }

  /** Keeps what there is; a lesson at its first step without ticks or timers is forgotten. */
  #keep(): void {
    const kept = this.#kept
    const place = kept.open || kept.ticks.length > 0 || kept.timers.length > 0 || this.#at > 0 ? kept : undefined
    keepPlace(place)
    showPlace(this.#way, place, () => this.#clear())
  }

  /** A link to another step leads there without leaving. */
  #follow(event: MouseEvent): void {
    const link = this.#open && event.target instanceof Element && event.target.closest<HTMLAnchorElement>('a[href^="#step-"]')
    const to = link ? this.#steps.findIndex((step) => `#${step.id}` === link.hash) : -1
    if (to < 0) return
    event.preventDefault()
    this.#go(to)
  }

  #key(event: KeyboardEvent): void {
    if (!this.#open || event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey) return
    if (event.key === 'Escape') return this.leave()
    if (isField(event.target) || event.target instanceof HTMLInputElement) return
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : event.key === 'Enter' && event.target === this.#steps[this.#at] ? 1 : 0
    if (by === 0 || this.#at + by < 0 || this.#at + by >= this.#steps.length) return
    event.preventDefault()
    this.#go(this.#at + by)
  }
}

/** stepState says whether the browser's own way back leads out of the step view. */
function stepState(): boolean {
  return (history.state as { step?: boolean } | null)?.step === true
}

let view: StepView | undefined

globalThis.atStep = (want) => {
  const way = document.querySelector<HTMLElement>('[data-step-in]')
  if (way) (view ??= new StepView(way)).use(want)
}
