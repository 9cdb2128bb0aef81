// A calculator's form: what is typed becomes a request, the engine's answer
// becomes what the page shows. Answers follow every key; what would disturb
// while somebody types (an error at the box being typed in, the voice of a
// screen reader) waits for a pause.
import * as words from '../words.yaml'
import { AnswerView, type Rows } from './answer'
import { Box, controls, isControl, part } from './box'
import type { Work } from './engine'
import { fill } from './say'

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
  readonly #copied: HTMLElement // that the link was copied
  readonly #byHand: HTMLElement // the link, where the browser does not copy
  #work: Work | undefined
  #broken: () => void
  #asked = false // the button was pressed since the last good answer
  #typing = false // keys came less than a pause ago
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
    this.#view = new AnswerView(this.section, more?.rows)
    this.#line = part(form, '[data-headline]')
    this.#voice = part(form, '[role=status]')
    this.#linked = part(form, '[data-linked]')
    this.#copied = part(form, '[data-copied]')
    this.#byHand = part(form, '[data-by-hand]')

    form.addEventListener('input', (e) => this.#typed(e))
    form.addEventListener('focusin', (e) => this.#moved(e.target))
    form.addEventListener('focusout', (e) => {
      this.#at = e.relatedTarget
      this.#settle()
    })
    form.addEventListener('keydown', (e) => this.#key(e))
    form.addEventListener('submit', (e) => {
      e.preventDefault()
      this.#ask()
    })
    for (const button of form.querySelectorAll('[data-clear]')) button.addEventListener('click', () => this.clear())
    part(form, '[data-copy]').addEventListener('click', () => void this.#copy())
    form.hidden = false
    form.ariaBusy = 'true'
    // Beside a form that works, somebody else's numbers are one touch away.
    form.parentElement?.querySelector('[data-example]')?.removeAttribute('open')
  }

  /** Gives the form its engine. */
  start(work: Work): void {
    this.#work = work
    this.#form.ariaBusy = null
    this.update()
  }

  /** Takes the boxes out of use; the page says why. */
  stop(): void {
    this.#form.hidden = true
    this.#form.ariaBusy = null
    this.#form.parentElement?.querySelector('[data-example]')?.setAttribute('open', '')
    this.#form.dataset['stopped'] = ''
    this.#view.clear()
  }

  /** Fills the boxes from a request; typed says that this reader typed it here. */
  restore(request: URLSearchParams, typed: boolean): void {
    for (const box of this.#boxes) box.take(request)
    this.restored = true
    this.#linked.hidden = typed
    this.update()
  }

  get request(): URLSearchParams {
    const request = new URLSearchParams({ calculator: this.name })
    for (const box of this.#boxes) box.ask(request)
    return request
  }

  /** Works out what stands in the boxes and shows it. */
  update(): void {
    if (!this.#work) {
      this.#line.textContent = words['calculator-wait'] ?? ''
      return
    }
    let answer: URLSearchParams
    try {
      answer = this.#work(this.request.toString())
    } catch {
      this.#broken()
      return
    }
    const wrong = new Map<string, string>()
    for (const [key, text] of answer) if (key.startsWith('error.')) wrong.set(key.slice('error.'.length), text)
    for (const box of this.#boxes) if (box.gap && !wrong.has(box.name)) wrong.set(box.name, '')
    for (const box of this.#boxes) box.say(answer.get(`read.${box.name}`) ?? '')
    if (wrong.size > 0) this.#refuse(wrong)
    else this.#show(answer)
    this.answer = wrong.size > 0 ? undefined : answer
    this.#form.dispatchEvent(new Event('answer'))
  }

  #show(answer: URLSearchParams): void {
    this.#view.show(answer)
    this.#line.textContent = answer.get('headline')
    this.#line.classList.remove('reckon-wrong')
    this.#line.classList.add('reckon-good')
    this.#asked = false
    this.#last = { first: this.#view.first, words: new Map(this.#boxes.map((b) => [b, b.words])) }
  }

  /** Empties the answers and says what is wrong, or quietly what is still to fill. */
  #refuse(wrong: ReadonlyMap<string, string>): void {
    const still: string[] = []
    const lines: string[] = []
    let changed: Box | undefined
    for (const [name, text] of wrong) {
      const box = this.#boxes.find((b) => b.name === name.replace(/\.unit$/, ''))
      if (!box) {
        lines.push(text) // about no box: the numbers together make no sense
        continue
      }
      changed ??= box
      if (this.#pending(box) || text === '') still.push(box.label)
      else if (this.#asked || !(this.#typing && box.holds(this.#at))) box.refuse(text)
    }
    if (still.length > 0) lines.push(fill(words['calculator-still'], still.join(', ')))
    if (this.#last && changed) {
      const typed = this.#last.words.get(changed) ?? '' // blank: the box had nothing in it
      lines.push(fill(typed === '' ? words['calculator-before-alone'] : words['calculator-before'], this.#last.first, typed))
    }
    this.#view.clear()
    this.#line.textContent = lines.join(' · ')
    this.#line.classList.toggle('reckon-wrong', !changed)
    this.#line.classList.remove('reckon-good')
  }

  /** A box that nobody has come to yet, or a list that is still catching up, is not wrong. */
  #pending(box: Box): boolean {
    if (this.#asked) return false
    if (box.empty) return !box.touched || box.holds(this.#at)
    const longest = Math.max(...this.#boxes.map((b) => b.texts.length))
    return box.list && box.texts.length < longest && this.#at instanceof Node && this.#form.contains(this.#at)
  }

  #typed(event: Event): void {
    const box = this.#boxes.find((b) => b.holds(event.target))
    if (box && !(event.target instanceof Element && event.target.matches('[name$=".unit"]'))) {
      for (const other of this.#boxes) other.yieldTo(box)
      box.touched = true
    }
    this.#typing = true
    this.#copied.textContent = ''
    this.#byHand.hidden = true
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => this.#settle(), pause)
    this.update()
    // Browsers are slow to set an address: the answer goes first.
    clearTimeout(this.#later)
    this.#later = setTimeout(() => this.#keep())
  }

  /** After a pause: errors at the box being typed in, and the voice, once. */
  #settle(): void {
    clearTimeout(this.#timer)
    const spoke = this.#typing
    const asked = this.#asked // a good answer takes this back
    this.#typing = false
    this.update()
    if (spoke || asked) this.#voice.textContent = this.#spoken()
  }

  #spoken(): string {
    const wrong = [...this.#form.querySelectorAll('[data-said].reckon-wrong')].map((e) => e.textContent ?? '')
    return [...wrong, this.#line.textContent ?? ''].filter((text) => text !== '').join(' ')
  }

  /** Keeps the first answer in sight: it stands under the box being typed in. */
  #moved(to: EventTarget | null): void {
    this.#at = to
    const box = isControl(to) && this.#boxes.find((b) => b.holds(to))
    if (!box) return
    box.put(this.#line)
    for (const other of this.#boxes) if (other !== box) other.trim()
  }

  /** Enter leads to the next box, and after the last one asks for the answer. */
  #key(event: KeyboardEvent): void {
    const inputs = [...this.#form.querySelectorAll<HTMLElement>(`[data-input] ${controls}`)]
    const seen = inputs.filter((i) => i.getClientRects().length > 0)
    const at = seen.findIndex((i) => i === event.target)
    if (event.key !== 'Enter' || event.isComposing || at < 0) return
    event.preventDefault()
    const next = seen[at + 1]
    if (next) next.focus()
    else this.#ask()
  }

  #ask(): void {
    this.#asked = true
    this.#settle()
    const wrong = this.#form.querySelector<HTMLElement>('[aria-invalid=true]')
    wrong?.focus()
  }

  /** Starts again with what the page had in the boxes. */
  clear(): void {
    this.#form.reset()
    for (const box of this.#boxes) {
      box.touched = false
      box.trim()
    }
    this.#asked = this.#typing = false
    this.#last = undefined
    this.#linked.hidden = true
    this.#voice.textContent = ''
    this.#place(location.pathname + location.hash)
    this.update()
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
      history.replaceState({ typed: this.#linked.hidden }, '', address)
    } catch {
      return
    }
  }

  /** Says something beside the buttons. */
  tell(text: string | undefined): void {
    this.#voice.textContent = this.#copied.textContent = text ?? ''
  }

  async #copy(): Promise<void> {
    this.#keep()
    const link = new URL(`?${this.request}#${this.#form.dataset['part']}`, location.href).href
    try {
      await navigator.clipboard.writeText(link)
      this.#byHand.hidden = true
      this.tell(words['calculator-copied'])
    } catch {
      const shown = part<HTMLInputElement>(this.#byHand, 'input')
      this.#byHand.hidden = false
      shown.value = link
      shown.select()
    }
  }
}
