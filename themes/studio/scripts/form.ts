// A calculator's form: what is typed becomes a request, the engine's answer
// becomes what the page shows. Answers follow every key. What would disturb
// somebody who types waits: the voice of a screen reader for a pause, and a
// refusal until the boxes that an answer needs have been filled and left.
import * as words from '../words.yaml'
import { AnswerView, type Rows } from './answer'
import { Box, fields, isField, part } from './box'
import type { Work } from './engine'
import { selectOnEntry } from './entry'
import { cameAgain, untouched } from './place'
import { button, fill, offer } from './say'

/** What a page with plans has beside plain boxes and tables. */
export interface More {
  readonly box: (root: HTMLElement) => Box
  readonly rows: Rows
}

const pause = 900 // milliseconds after the last key

export class Form {
  readonly name: string
  readonly part: string // its place on the page
  readonly element: HTMLFormElement
  readonly section: HTMLElement // the calculator's whole part of the page
  answer: URLSearchParams | undefined // the answer that is shown; the form tells of each with an event of this name
  restored = false // its numbers came with the page's address
  readonly #form: HTMLFormElement
  readonly #boxes: Box[]
  readonly #view: AnswerView
  readonly #line: HTMLElement // the first answer in words, under the box being typed in
  readonly #voice: HTMLElement // what a screen reader says
  readonly #linked: HTMLElement
  readonly #whose: HTMLElement | null // says whether the numbers are the lesson's
  readonly #given: string // the request of the page's own numbers
  readonly #told: HTMLElement // what a tool has to say
  readonly #cleared: HTMLElement // offers to undo "start again"
  #work: Work | undefined
  #waiting = '' // what is said while there is none
  #broken: () => void
  #asked = false // the button was pressed since the last key
  #editing = false // something was typed into the box that has the focus
  #news = false // something was typed since the voice last spoke
  #spoken = ''
  #at: EventTarget | null = null // what has the focus
  #timer = 0 // ends the pause
  #later = 0 // sets the address
  #last: { first: string; words: Map<Box, string> } | undefined // the last good answer

  /** broken is called when the engine fails in the middle of its work. */
  constructor(form: HTMLFormElement, broken: () => void, more?: More) {
    this.name = form.dataset['calculator'] ?? ''
    this.part = form.dataset['part'] ?? ''
    this.element = this.#form = form
    this.section = part(document, `#${CSS.escape(this.part)}`)
    this.#broken = broken
    this.#boxes = [...form.querySelectorAll<HTMLElement>('[data-input]')].map(more?.box ?? ((e) => new Box(e)))
    this.#view = new AnswerView(this.section, form.dataset['folder'] ?? '', more?.rows)
    this.#line = part(form, '[data-headline]')
    this.#voice = part(form, '[data-voice]')
    this.#linked = part(form, '[data-linked]')
    this.#told = part(this.section, '[data-told]')
    this.#cleared = offer()
    this.#whose = form.querySelector('[data-whose]')
    this.#given = this.request.toString()

    selectOnEntry(form)
    form.addEventListener('input', (e) => this.#typed(e))
    form.addEventListener('focusin', (e) => this.#moved(e.target))
    form.addEventListener('focusout', (e) => this.#left(e.relatedTarget))
    form.addEventListener('keydown', (e) => this.#key(e))
    // Some keyboards send the letter of Enter on its own, to where the focus has gone by then.
    form.addEventListener('keypress', (e) => e.key === 'Enter' && isField(e.target) && e.preventDefault())
    form.addEventListener('submit', (e) => {
      e.preventDefault()
      this.#ask()
    })
    for (const button of form.querySelectorAll('[data-clear]')) button.addEventListener('click', () => this.clear())
    this.section.querySelector('[data-late]')?.remove()
    form.hidden = false
    // Beside a form that works, somebody else's numbers are one touch away.
    this.section.querySelector('[data-example]')?.removeAttribute('open')
  }

  /** Says that the engine is coming, or comes once it is wanted, and how large it is. */
  wait(coming: boolean, kilobytes: number): void {
    this.#waiting = fill(coming ? words['calculator-wait'] : words['calculator-wanted'], kilobytes)
    if (coming) {
      this.#form.setAttribute('aria-busy', 'true')
      delete this.#form.dataset['waits']
    } else {
      this.#form.removeAttribute('aria-busy')
      this.#form.dataset['waits'] = ''
    }
    // What comes by itself is there before most people type: nothing is said until then.
    if (!coming || this.#line.textContent) this.#line.textContent = this.#waiting
  }

  /** Gives the form its engine. Numbers that came with a link lead to their answer. */
  start(work: Work): void {
    this.#work = work
    this.#form.removeAttribute('aria-busy')
    this.update()
    if (this.linked && this.answer && this.fresh) this.#lead()
  }

  /** Takes the boxes out of use; the page says why. */
  stop(): void {
    this.#form.hidden = true
    delete this.#form.dataset['waits']
    this.#form.removeAttribute('aria-busy')
    this.section.querySelector('[data-example]')?.setAttribute('open', '')
    this.#form.dataset['stopped'] = ''
    this.#view.clear()
  }

  /** Fills the boxes from a request; typed says that this reader typed it here. */
  restore(request: URLSearchParams, typed: boolean): void {
    for (const box of this.#boxes) box.take(request)
    this.restored = true
    this.#linked.hidden = typed
    this.#cleared.remove()
    this.update()
  }

  /** Whether its numbers came with a link, and nobody has typed others. */
  get linked(): boolean {
    return this.restored && this.#linked.hidden !== true
  }

  /** Whether the reader has just come, by a link, and has yet to move. */
  get fresh(): boolean {
    return untouched() && !cameAgain()
  }

  /** Brings back numbers that stood here before. */
  take(request: URLSearchParams, typed = true): void {
    this.restore(request, typed)
    this.#keep()
  }

  get request(): URLSearchParams {
    const request = new URLSearchParams({ calculator: this.name })
    for (const box of this.#boxes) box.ask(request)
    return request
  }

  /** Says whose numbers stand in the boxes: a lesson's example is not the reader's jar. */
  #own(): void {
    const given = this.request.toString() === this.#given
    if (!this.#whose || this.#whose.dataset['whose'] === String(given)) return
    this.#whose.dataset['whose'] = String(given)
    this.#whose.replaceChildren((given ? words['calculator-lessons'] : words['calculator-yours']) ?? '')
    if (!given) this.#whose.append(' ', button(words['calculator-lessons-back'], () => this.clear()))
  }

  /** Works out what stands in the boxes and shows it. */
  update(): void {
    this.#own()
    if (!this.#work) {
      this.#line.textContent = this.#waiting
      return
    }
    try {
      this.#take(this.#work(this.request.toString()))
    } catch {
      this.#broken() // whatever it was: an answer half shown would be worse than none
    }
  }

  /** Shows an answer, or what is wrong. */
  #take(answer: URLSearchParams): void {
    const wrong = new Map<string, string>()
    for (const [key, text] of answer) if (key.startsWith('error.')) wrong.set(key.slice('error.'.length), text)
    for (const box of this.#boxes) if (box.gap && !wrong.has(box.name)) wrong.set(box.name, '')
    if (wrong.size > 0) this.#refuse(wrong, answer)
    else this.#show(answer)
    for (const box of this.#boxes) {
      if (!box.refused) box.say(answer.get(`read.${box.name}`) ?? '')
      box.hear(answer.get(`chosen.${box.name}`))
    }
    this.answer = wrong.size > 0 ? undefined : answer
    this.#form.dispatchEvent(new Event('answer'))
  }

  #show(answer: URLSearchParams): void {
    for (const box of this.#boxes) box.say('')
    this.#view.show(answer)
    this.#line.textContent = fill(words['calculator-answer'], answer.get('headline') ?? '')
    this.#line.classList.remove('reckon-wrong')
    this.#line.classList.add('reckon-good')
    this.#asked = false
    this.#last = { first: this.#view.first, words: new Map(this.#boxes.map((b) => [b, b.words])) }
  }

  /** Empties the answers and says what is wrong, or quietly what is still to fill. */
  #refuse(wrong: ReadonlyMap<string, string>, answer: URLSearchParams): void {
    const boxes = new Map([...wrong.keys()].map((name) => [name, this.#boxes.find((b) => b.name === name.replace(/\.unit$/, ''))]))
    const open = new Set([...boxes.values()].filter((box) => box && this.#open(box, wrong.get(box.name))))
    // Somebody who types, or has yet to come to a box, is not told off.
    const due = this.#asked || (open.size === 0 && !this.#editing)
    const lines: string[] = []
    for (const box of this.#boxes) if (!wrong.has(box.name)) box.say('')
    for (const [name, text] of wrong) {
      const box = boxes.get(name)
      if (box && !open.has(box) && (due || (box.refused && !box.holds(this.#at)))) box.refuse(text, Number(answer.get(`wrong.${name}`) ?? '0'))
      else if (box) box.say('')
      else if (due) lines.push(text) // about no box: the numbers together make no sense
    }
    if (open.size > 0) lines.push(fill(words['calculator-still'], [...open].map((box) => box?.label).join(', ')))
    const changed = [...boxes.values()].find((box) => box)
    if (this.#last && changed) {
      const typed = this.#last.words.get(changed) ?? '' // blank: the box had nothing in it
      lines.push(fill(typed === '' ? words['calculator-before-alone'] : words['calculator-before'], this.#last.first, typed))
    }
    this.#view.clear()
    this.#form.prepend(this.#linked)
    this.#line.textContent = lines.join(' · ')
    this.#line.classList.toggle('reckon-wrong', due && !changed)
    this.#line.classList.remove('reckon-good')
  }

  /** A box that is still to fill, or a list that is still catching up, is not wrong. */
  #open(box: Box, text: string | undefined): boolean {
    if (text === '') return true // a list with a box left out
    if (this.#asked) return false
    const longest = Math.max(...this.#boxes.map((b) => b.texts.length))
    return box.empty || (box.list && box.texts.length < longest && this.#at instanceof Node && this.#form.contains(this.#at))
  }

  #typed(event: Event): void {
    const box = this.#boxes.find((b) => b.holds(event.target))
    if (box && !(event.target instanceof Element && event.target.matches('[name$=".unit"]'))) {
      for (const other of this.#boxes) other.yieldTo(box)
      box.touched = true
    }
    this.#asked = false
    this.#editing = event.target instanceof HTMLInputElement && event.target === document.activeElement
    this.#news = true
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => this.#speak(), pause)
    this.update()
    if (this.answer) this.#cleared.remove()
    // Browsers are slow to set an address: the answer goes first.
    clearTimeout(this.#later)
    this.#later = setTimeout(() => this.#keep())
  }

  /** A box was left: what is wrong there may now be said. */
  #left(to: EventTarget | null): void {
    this.#at = to
    this.#editing = false
    this.update()
    this.#speak()
  }

  /** Lets a screen reader say what is new: the answer, or what is wrong. */
  #speak(): void {
    clearTimeout(this.#timer)
    const wrong = this.#boxes.filter((box) => box.refused).map((box) => box.said)
    const said = [...wrong, this.#line.textContent ?? ''].filter((text) => text !== '').join(' ')
    if (said !== this.#spoken && (this.#news || wrong.length > 0)) this.#voice.textContent = this.#spoken = said
    this.#news = false
  }

  /** Keeps the first answer in sight: it stands under the box being typed in. */
  #moved(to: EventTarget | null): void {
    this.#at = to
    const box = isField(to) && this.#boxes.find((b) => b.holds(to))
    if (!box) return
    box.put(this.#line)
    this.#line.classList.add('reckon-under')
    for (const other of this.#boxes) if (other !== box) other.trim()
  }

  /** Enter leads to the next box, and after the last one asks for the answer. */
  #key(event: KeyboardEvent): void {
    const inputs = [...this.#form.querySelectorAll<HTMLElement>(`[data-input] ${fields}`)]
    // What is folded away may have a place and still take no focus.
    const seen = inputs.filter((i) => i.getClientRects().length > 0 && !i.closest('details:not([open])'))
    const at = seen.findIndex((i) => i === event.target)
    if (event.key !== 'Enter' || event.isComposing || at < 0) return
    event.preventDefault()
    const next = seen[at + 1]
    if (next) next.focus()
    else this.#ask()
  }

  /** Leads to the answer, or to the first box that keeps it from being one. */
  #ask(): void {
    this.#asked = true
    this.#editing = false
    this.update()
    this.#news = true
    this.#speak()
    if (this.answer) this.#lead()
    else this.#form.querySelector<HTMLElement>('[aria-invalid=true]')?.focus()
  }

  #lead(): void {
    const result = part<HTMLElement>(this.section, '[data-result]')
    part(result, '[data-list=judged]').after(this.#linked)
    result.focus({ preventScroll: true })
    result.scrollIntoView({ block: 'start' })
  }

  /** Starts again with what the page had in the boxes, and offers to take that back. */
  clear(): void {
    const before = this.request
    const typed = this.#linked.hidden === true
    this.#form.reset()
    for (const box of this.#boxes) {
      box.touched = false
      box.trim()
    }
    this.#asked = this.#editing = this.#news = false
    this.#last = undefined
    this.#linked.hidden = true
    this.#voice.textContent = this.#spoken = ''
    this.#place(location.pathname + location.hash)
    this.update()
    if (before.toString() !== this.request.toString()) {
      const back = button(words['calculator-bring-back'], () => {
        this.take(before, typed)
        this.#form.querySelector<HTMLElement>('[type=submit]')?.focus()
      })
      this.#cleared.replaceChildren(words['calculator-cleared'] ?? '', ' ', back)
      this.#form.prepend(this.#cleared)
    }
    this.#form.querySelector<HTMLElement>(`[data-input] :is(input, select)`)?.focus()
  }

  /** Keeps the filled-in form as the page's address. */
  #keep(): void {
    this.#place(`?${this.request}${location.hash}`)
  }

  /**
   * Sets the page's address, with a mark that tells numbers typed here from
   * those of a link. A browser that refuses is left alone: some do for pages
   * opened as files, some after very many keys.
   */
  #place(address: string): void {
    try {
      history.replaceState({ ...history.state, typed: this.#linked.hidden }, '', address)
    } catch {
      return
    }
  }

  /** The filled-in form as a link, which is from now on the page's address. */
  get link(): string {
    this.#keep()
    return new URL(`?${this.request}#${this.part}`, location.href).href
  }

  /** Says something beside the buttons. */
  tell(text: string | undefined): void {
    this.#voice.textContent = this.#told.textContent = text ?? ''
  }
}
