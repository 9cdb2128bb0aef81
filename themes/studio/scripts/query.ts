// What is looked for stands in the page's address, so that it can be sent to somebody
// else, and a reload or a way back costs nothing.

/** queried reads it. */
export function queried(): string {
  return new URLSearchParams(location.search).get('q') ?? ''
}

/** query is the part of an address that says it; empty for nothing. */
export function query(typed: string): string {
  return typed === '' ? '' : `?${new URLSearchParams({ q: typed })}`
}

/** keepQuery writes it there. Some browsers refuse for pages opened as files. */
export function keepQuery(typed: string): void {
  try {
    history.replaceState(null, '', location.pathname + query(typed) + location.hash)
  } catch {
    return
  }
}
