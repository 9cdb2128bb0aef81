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
}

/** The key names its version: another version's memory is not read. */
function key(part: string): string {
  return `slipbook.bench.1:${location.pathname}#${part}`
}

/** recall gives what is kept for a part of this page. */
export function recall(part: string): Kept | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(key(part)) ?? '') as Partial<Kept>
    const { request = '', bench = false, at = 0, sheet = false, ticks = [] } = kept
    return { request, bench, at, sheet, ticks: Array.isArray(ticks) ? ticks : [] }
  } catch {
    return undefined
  }
}

/** keep remembers a calculator, or forgets it. */
export function keep(part: string, kept: Kept | undefined): void {
  try {
    if (kept) localStorage.setItem(key(part), JSON.stringify(kept))
    else localStorage.removeItem(key(part))
  } catch {
    return
  }
}
