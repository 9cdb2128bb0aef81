// What is kept on this phone for a calculator at the bench, so that a sleep or
// a reload costs nothing. Nothing leaves the phone. Where a browser keeps
// nothing (private windows, some pages opened as files) all works but this.

/** Kept is one calculator's memory. */
export interface Kept {
  readonly request: string // what stood in the boxes
  readonly bench: boolean // bench mode was on
  readonly at: number // which box it showed
  readonly sheet: boolean // the mixing sheet was open
  readonly ticks: readonly string[] // its lines that were ticked
  readonly name?: string // what the calculator is called
}

/** What is kept of calculators begins with this, which names its version: another version's memory is not read. */
export const ofBench = 'slipbook.bench.1:'

function key(part: string): string {
  return `${ofBench}${location.pathname}#${part}`
}

/** isKept reports whether something is whole, as keep writes it: storage can hold anything. */
export function isKept(it: unknown): it is Kept {
  if (typeof it !== 'object' || it === null) return false
  const { request, bench, at, sheet, ticks, name } = it as Record<keyof Kept, unknown>
  return typeof request === 'string' && typeof bench === 'boolean' && typeof sheet === 'boolean'
    && Number.isSafeInteger(at) && (at as number) >= 0
    && Array.isArray(ticks) && ticks.every((tick) => typeof tick === 'string')
    && (name === undefined || typeof name === 'string')
}

/** recall returns what is kept for a part of this page. What does not hold is dropped. */
export function recall(part: string): Kept | undefined {
  return stored(key(part), isKept)
}

/** stored returns what is kept under a name, if it is what it should be; else it is dropped. */
export function stored<T>(name: string, is: (it: unknown) => it is T): T | undefined {
  try {
    const text = localStorage.getItem(name)
    if (text === null) return undefined
    const kept = parsed(text)
    if (is(kept)) return kept
    localStorage.removeItem(name)
  } catch {
    // A browser that keeps nothing.
  }
  return undefined
}

/** parsed returns what a JSON text holds; nothing for a text that is none. */
export function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** keep remembers a calculator, or forgets it. */
export function keep(part: string, kept: Kept | undefined): void {
  store(key(part), kept)
}

/** store keeps something under a name, or forgets it. */
export function store(name: string, kept: object | undefined): void {
  try {
    if (kept) localStorage.setItem(name, JSON.stringify(kept))
    else localStorage.removeItem(name)
  } catch {
    return
  }
}
