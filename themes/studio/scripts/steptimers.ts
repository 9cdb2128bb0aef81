// The timers that run at a lesson's steps: what is left of each, and once, that it
// is over. None of them knows what the clay does: each asks to look.
import * as words from '../words.yaml'
import { button, fill, make } from './say'
import type { Place, Timer } from './stepkept'
import { dial, due, left, said } from './timer'

export class Timers {
  readonly element = make('div', 'step-timers')
  readonly #list = make('ul', '')
  readonly #voice = make('p', 'unseen')
  readonly #numberOf: (step: string) => number
  readonly #changed: () => void
  #all: Timer[]
  #stopped: Timer | undefined // the last that was stopped before it was over
  #sound: boolean
  #ring: AudioContext | undefined
  #every = 0

  /** numberOf returns the number of a step by its key; changed is called when there is something to keep. */
  constructor(kept: Place | undefined, numberOf: (step: string) => number, changed: () => void) {
    this.#numberOf = numberOf
    this.#changed = changed
    this.#all = [...(kept?.timers ?? [])].filter((timer) => numberOf(timer.step) > 0)
    this.#sound = kept?.sound ?? false
    this.#voice.setAttribute('role', 'status')
    this.element.append(this.#voice, this.#list)
    document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && this.#look())
  }

  get kept(): Pick<Place, 'timers' | 'sound'> {
    return { timers: this.#all, sound: this.#sound }
  }

  /** Begins a time at a step, in the place of one that runs there. */
  add(step: string, seconds: number): void {
    this.#take(step)
    this.#put({ step, seconds, end: Date.now() + seconds * 1000, said: false })
  }

  #put(timer: Timer): void {
    this.#all = [...this.#all.filter(({ step }) => step !== timer.step), timer]
    this.#changed()
    this.#draw()
    this.start()
  }

  /** Takes away the timer of a step; one that still ran can be had back. */
  #take(step: string): void {
    const gone = this.#all.find((timer) => timer.step === step)
    this.#stopped = gone && !gone.said ? gone : undefined
    this.#all = this.#all.filter((timer) => timer !== gone)
  }

  /** Looks at the clock, and again each second while a timer runs. */
  start(): void {
    if (this.#every === 0) this.#draw()
    this.#look()
  }

  #look(): void {
    const over = due(this.#all, Date.now())
    if (over.length > 0) {
      this.#all = this.#all.map((timer) => over.includes(timer) ? { ...timer, said: true } : timer)
      this.#voice.textContent = over.map((timer) => this.#words({ ...timer, said: true })).join(' ')
      navigator.vibrate?.([300, 150, 300])
      if (this.#sound) this.#beep()
      this.#changed()
      this.#draw()
    }
    this.#all.forEach((timer, n) => {
      const line = this.#list.children[n]?.firstElementChild
      if (line && !timer.said) line.textContent = this.#words(timer)
    })
    const running = this.#all.some((timer) => !timer.said)
    if (running === this.#every > 0) return
    clearInterval(this.#every)
    this.#every = running ? setInterval(() => this.#look(), 1000) : 0
  }

  #words(timer: Timer): string {
    const number = this.#numberOf(timer.step)
    if (timer.said) return fill(words['step-over'], number, said(timer.seconds))
    return fill(words['step-timer'], number, dial(left(timer.end, Date.now())))
  }

  #draw(): void {
    const first = this.#all.find((timer) => !timer.said)
    this.#list.replaceChildren(...this.#all.map((timer) => make('li', timer.said ? 'step-over' : '', make('span', '', this.#words(timer)),
      timer === first ? this.#ringer() : undefined, button(timer.said ? words['step-put-away'] : words['step-stop'], () => this.#stop(timer.step)))))
    const gone = this.#stopped
    if (!gone) return
    this.#list.append(make('li', '', make('span', '', fill(words['step-stopped'], this.#numberOf(gone.step), said(gone.seconds))), button(words['step-let-run'], () => {
      this.#stopped = undefined
      this.#put(gone)
      this.#list.querySelector('button')?.focus()
    })))
  }

  #stop(step: string): void {
    this.#take(step)
    this.#changed()
    this.#draw()
    this.#list.querySelector('button')?.focus()
  }

  /** Sound comes only when somebody has asked for it, on this page: browsers want a touch first. */
  #ringer(): HTMLElement {
    const box = make('input', '')
    box.type = 'checkbox'
    box.checked = this.#sound
    box.addEventListener('change', () => {
      this.#sound = box.checked
      if (box.checked) this.#beep(0.1)
      this.#changed()
    })
    return make('label', 'step-tick', box, words['step-sound'] ?? '')
  }

  #beep(seconds = 0.6): void {
    if (!('AudioContext' in globalThis)) return
    this.#ring ??= new AudioContext()
    void this.#ring.resume().catch(() => undefined)
    const tone = this.#ring.createOscillator()
    const volume = this.#ring.createGain()
    volume.gain.value = 0.3
    tone.frequency.value = 660
    tone.connect(volume).connect(this.#ring.destination)
    tone.start()
    tone.stop(this.#ring.currentTime + seconds)
  }
}
