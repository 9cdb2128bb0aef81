// One input of a form: its box with a unit chooser, a chooser alone, or for a
// list several boxes, and the line below it that says how it was read or what
// is wrong.

/** A part of the page that must be there; the templates see to it. */
export function part<E extends Element>(root: ParentNode, selector: string): E {
  const found = root.querySelector<E>(selector)
  if (!found) throw new Error(`the page has no ${selector}`)
  return found
}

/** What an input is typed into or chosen with. */
export type Control = HTMLInputElement | HTMLSelectElement

/** Selects the controls of inputs, unit choosers apart. */
export const controls = ':is(input, select)[name]:not([name$=".unit"])'

/** Selects all that can be filled in: controls, and the choosers of rows that one control stands for. */
export const fields = `:is(${controls}, [data-rows] select)`

/** isField says whether an event comes from one of them. */
export function isField(target: EventTarget | null): target is Control {
  return target instanceof Element && target.matches(fields)
}

export class Box {
  readonly name: string
  readonly label: string
  readonly #root: HTMLElement
  readonly #said: HTMLElement
  readonly #unit: HTMLSelectElement | null
  readonly #default: string
  readonly #group: string
  readonly #side: string
  readonly #first: Control
  readonly #starts: number // how many boxes a list starts with
  readonly #most: number // how many it may have; 1 for what is no list
  touched = false // something has been typed here
  refused = false // says what is wrong

  constructor(root: HTMLElement) {
    const { input = '', still = '', default: initial = '', group = '', side = '', most = '1' } = root.dataset
    this.name = input
    this.label = still
    this.#root = root
    this.#said = part(root, '[data-said]')
    this.#unit = root.querySelector('select[name$=".unit"]')
    this.#default = initial
    this.#group = group
    this.#side = side
    this.#first = part(root, controls)
    this.#starts = this.inputs.length
    this.#most = Number(most)
    root.querySelector('[data-add]')?.addEventListener('click', () => this.#add())
  }

  get inputs(): Control[] {
    return [...this.#root.querySelectorAll<Control>(controls)]
  }

  holds(element: EventTarget | null): boolean {
    return element instanceof Node && this.#root.contains(element)
  }

  /** What was typed, without the empty boxes at a list's end. */
  get texts(): string[] {
    const texts = this.inputs.map((i) => i.value.trim())
    while (texts.at(-1) === '') texts.pop()
    return texts
  }

  get empty(): boolean {
    return this.texts.length === 0
  }

  get list(): boolean {
    return this.#most > 1
  }

  /** A list with a box left out: its values would slip to other bars. */
  get gap(): boolean {
    return this.texts.includes('')
  }

  /** What was typed with its unit, for "before: 1.5 for 150 g". */
  get words(): string {
    const unit = this.#unit?.value ?? this.#root.dataset['unit'] ?? ''
    if (this.#first instanceof HTMLSelectElement) return this.#first.selectedOptions[0]?.text ?? ''
    return this.texts.map((t) => (unit && /\d$/.test(t) ? `${t} ${unit}` : t)).join('; ')
  }

  /** Adds what stands here to a request. */
  ask(request: URLSearchParams): void {
    if (this.empty) return
    for (const text of this.texts) request.append(this.name, text)
    if (this.#unit) request.set(this.#unit.name, this.#unit.value)
  }

  /** Takes what a request says of this input; what it leaves out has its default. */
  take(request: URLSearchParams): void {
    const texts = request.getAll(this.name)
    this.touched = texts.length > 0
    if (!this.touched) texts.push(this.#default)
    while (this.inputs.length < texts.length && this.#grow());
    this.inputs.forEach((input, n) => put(input, texts[n] ?? ''))
    if (!this.#unit) return
    const unit = request.get(this.#unit.name)
    this.#unit.selectedIndex = Math.max(0, [...this.#unit.options].findIndex((o) => o.value === unit))
  }

  /** Makes room for another side of the group: what the lesson filled in goes, what was typed stays. */
  yieldTo(other: Box): void {
    const rival = this.#group !== '' && this.#group === other.#group && this.#side !== other.#side
    if (rival && !other.empty && !this.touched) this.#first.value = ''
  }

  /** What stands below the boxes: how they were read, or what is wrong. */
  get said(): string {
    return this.#said.textContent ?? ''
  }

  say(text: string): void {
    this.refused = false
    this.#said.textContent = text
    this.#said.classList.remove('reckon-wrong')
    for (const i of this.inputs) i.removeAttribute('aria-invalid')
  }

  /** Says what is wrong. number tells which box of a list it is, from 1; 0 means all of them. */
  refuse(text: string, number: number): void {
    this.say(text)
    this.refused = true
    this.#said.classList.add('reckon-wrong')
    const one = this.inputs[number - 1]
    for (const i of one ? [one] : this.inputs) i.setAttribute('aria-invalid', 'true')
    const folded = this.#root.closest('details')
    if (folded) folded.open = true
  }

  /** Takes what the engine understood of words, as choosers write it; null where they cannot. */
  hear(_chosen: string | null): void {}

  /** Puts an element right under the box, and where two stand side by side under both. */
  put(element: HTMLElement): void {
    if (this.#root.dataset['paired'] === undefined) return this.#said.before(element)
    const next = this.#root.nextElementSibling
    const beside = next instanceof HTMLElement && next !== element && next.offsetTop === this.#root.offsetTop
    ;(beside ? next : this.#root).after(element)
  }

  /** Takes away boxes that were added and are empty. */
  trim(): void {
    const inputs = this.inputs
    while (inputs.length > this.#starts && inputs.at(-1)?.value === '') inputs.pop()?.parentElement?.remove()
    this.#offer()
  }

  /** Leads to the next empty box of a list, a new one if need be. */
  #add(): void {
    const next = this.inputs.find((i) => i.value.trim() === '') ?? this.#grow()
    next?.focus()
  }

  #grow(): Control | undefined {
    const last = this.inputs.at(-1)?.parentElement
    const count = this.inputs.length
    if (!last || count >= this.#most) return undefined
    const copy = last.cloneNode(true) as HTMLElement
    last.after(copy)
    const input = part<HTMLInputElement>(copy, 'input')
    input.value = input.defaultValue = ''
    input.id = `${this.#first.id}.${count + 1}`
    const label = part<HTMLLabelElement>(copy, '[data-count]')
    label.htmlFor = input.id
    label.textContent = String(count + 1)
    this.#offer()
    return input
  }

  #offer(): void {
    const add = this.#root.querySelector<HTMLElement>('[data-add]')
    if (add) add.hidden = this.inputs.length >= this.#most
  }
}

/** put sets a control. A choice that is not offered is added, so that it is refused in words and not lost. */
function put(control: Control, text: string): void {
  if (control instanceof HTMLInputElement) {
    control.value = text
    return
  }
  const same = (other: string): boolean => other.toLowerCase() === text.toLowerCase()
  let at = [...control.options].findIndex((o) => same(o.value) || same(o.text))
  if (at < 0) {
    control.add(new Option(text))
    at = control.length - 1
  }
  control.selectedIndex = at
}
