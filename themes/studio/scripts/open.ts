// What is open on this phone: mixing sheets, and lessons of which one step was shown
// alone. Worked out from what is kept, without a page.
import { isKept, ofBench, parsed } from './kept'
import { isPlace, ofSteps } from './stepkept'

/** Work is something to go on with. */
export interface Work {
  readonly name: string
  readonly address: string // from the server's root
  readonly step: number // of a lesson; of a sheet nothing
}

/** openWork finds it among what a browser keeps, sheets first; root is the path of the handbook. */
export function openWork(stored: Iterable<readonly [key: string, text: string]>, root: string): Work[] {
  const all = [...stored].flatMap(([key, text]) => workOf(key, parsed(text), root))
  return all.sort((a, b) => Number(a.step > 0) - Number(b.step > 0) || (a.address < b.address ? -1 : 1))
}

function workOf(key: string, kept: unknown, root: string): Work[] {
  if (key.startsWith(ofBench + root) && isKept(kept) && kept.sheet && kept.name) {
    return [{ name: kept.name, address: key.slice(ofBench.length), step: 0 }]
  }
  if (key.startsWith(ofSteps + root) && isPlace(kept) && kept.name && kept.number
    && (kept.open || kept.timers.some((timer) => !timer.said))) {
    return [{ name: kept.name, address: key.slice(ofSteps.length), step: kept.number }]
  }
  return []
}
