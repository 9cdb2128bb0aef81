// Where the reader was. A browser scrolls back after a reload before the
// calculators have put back what stood there, and so ends too low; the page
// therefore remembers which of its parts was at the top of the window, for as
// long as the tab is open, and goes back to it once all of them stand again.

import { parsed } from './kept'

/** What stands in the same order before and after a reload. */
const parts = ':is(main, [data-section], [data-result], [data-answers]) > :not([data-linked], [data-offer]), [data-stop], [data-lines] > li'

/** Spot is the part at the top of the window, and how far below its edge it began. */
interface Spot {
  readonly n: number
  readonly top: number
}

const key = (): string => `slipbook.place:${location.pathname}`
let moved = false // the reader has scrolled, touched or typed since the page came

/** cameAgain says whether the page was loaded again and not opened by a link. */
export function cameAgain(): boolean {
  const [entry] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[]
  return entry?.type === 'reload' || entry?.type === 'back_forward'
}

/** untouched says whether the page may still be moved under the reader. */
export function untouched(): boolean {
  return !moved
}

/** watchPlace notes where the reader is whenever the page may be about to go. */
export function watchPlace(): void {
  for (const kind of ['wheel', 'touchmove', 'keydown', 'pointerdown']) {
    addEventListener(kind, () => { moved = true }, { once: true, passive: true, capture: true })
  }
  if (cameAgain() && spot()) history.scrollRestoration = 'manual'
  addEventListener('pagehide', note)
  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && note())
}

/** backToPlace goes to where the reader was, as far as the page stands. */
export function backToPlace(): void {
  const was = cameAgain() && untouched() ? spot() : undefined
  const part = was && document.querySelectorAll(parts)[was.n]
  if (part) scrollBy({ top: part.getBoundingClientRect().top - was.top, behavior: 'instant' })
}

/** spotOf returns the spot that a text tells of; nothing when it tells of none, for storage can hold anything. */
export function spotOf(text: string | null): Spot | undefined {
  const it = parsed(text ?? '')
  if (typeof it !== 'object' || it === null) return undefined
  const { n, top } = it as Record<keyof Spot, unknown>
  return Number.isSafeInteger(n) && (n as number) >= 0 && Number.isFinite(top) ? { n: n as number, top: top as number } : undefined
}

function spot(): Spot | undefined {
  try {
    const found = spotOf(sessionStorage.getItem(key()))
    if (!found) sessionStorage.removeItem(key())
    return found
  } catch {
    return undefined
  }
}

function note(): void {
  let best: Spot | undefined
  document.querySelectorAll(parts).forEach((part, n) => {
    const { top, height } = part.getBoundingClientRect()
    if (height > 0 && (!best || Math.abs(top) <= Math.abs(best.top))) best = { n, top }
  })
  try {
    sessionStorage.setItem(key(), JSON.stringify(best))
  } catch {
    return
  }
}
