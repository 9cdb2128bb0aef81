// What is kept on this phone of a lesson: at which step the reader was, which are
// ticked, which timers run. Steps are known by a key made of their words, so that a
// tick never comes to stand at another step after the lesson has changed.
import { store, stored } from './kept'

/** Timer is a time that was started at a step. */
export interface Timer {
  readonly step: string // its key
  readonly seconds: number // how long it was
  readonly end: number // when it is over, in milliseconds of the clock
  readonly said: boolean // that it is over has been said
}

/** Place is one lesson's memory. */
export interface Place {
  readonly at: string // the key of the step
  readonly open: boolean // it was shown alone
  readonly ticks: readonly string[] // keys
  readonly timers: readonly Timer[]
  readonly sound: boolean // a timer rings, too
  readonly name?: string // what the lesson is called
  readonly number?: number // of the step
}

/** What is kept of lessons begins with this, which names its version: another version's memory is not read. */
export const ofSteps = 'slipbook.steps.1:'

const key = (): string => ofSteps + location.pathname

function isTimer(it: unknown): it is Timer {
  if (typeof it !== 'object' || it === null) return false
  const { step, seconds, end, said } = it as Record<keyof Timer, unknown>
  return typeof step === 'string' && Number.isSafeInteger(seconds) && (seconds as number) > 0 && Number.isFinite(end) && typeof said === 'boolean'
}

/** isPlace reports whether something is whole, as keepPlace writes it: storage can hold anything. */
export function isPlace(it: unknown): it is Place {
  if (typeof it !== 'object' || it === null) return false
  const { at, open, ticks, timers, sound, name, number } = it as Record<keyof Place, unknown>
  return typeof at === 'string' && typeof open === 'boolean' && typeof sound === 'boolean'
    && Array.isArray(ticks) && ticks.every((tick) => typeof tick === 'string')
    && Array.isArray(timers) && timers.every(isTimer)
    && (name === undefined || typeof name === 'string') && (number === undefined || Number.isSafeInteger(number))
}

/** recallPlace returns what is kept of this lesson. What does not hold is dropped. */
export function recallPlace(): Place | undefined {
  return stored(key(), isPlace)
}

/** keepPlace remembers it, or forgets it. */
export function keepPlace(place: Place | undefined): void {
  store(key(), place)
}
