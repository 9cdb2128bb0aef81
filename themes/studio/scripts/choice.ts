// Whether the reader wants the handbook on this phone. A browser that keeps no such
// note keeps no handbook either.

/** Choice is "yes" where somebody asked for it, "no" where somebody dropped it. */
export type Choice = 'yes' | 'no'

const key = (root: URL): string => `slipbook.phone:${root.pathname}`

/** choice is what was chosen for a handbook; nothing while nobody chose. */
export function choice(root: URL): string | null {
  try {
    return localStorage.getItem(key(root))
  } catch {
    return null
  }
}

/** choose notes it. */
export function choose(root: URL, what: Choice): void {
  try {
    localStorage.setItem(key(root), what)
  } catch {
    return
  }
}
