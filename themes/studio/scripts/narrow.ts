// Which tiles of the wall are shown, and which two stand side by side: worked out
// without a page. Both stand in the address, so that it can be sent to somebody else
// and a reload costs nothing.

/** What the wall is narrowed by, as the address names it. */
export const facets = ['body', 'coats', 'clear', 'place'] as const
export type Facet = (typeof facets)[number]

/** Facts are what a tile has of each; empty where nobody wrote it down. */
export type Facts = Readonly<Record<Facet, string>>

/** Choice is what is wanted of each; what is left out may be anything. */
export type Choice = Readonly<Partial<Record<Facet, string>>>

/** chosenIn reads a choice from an address; what no tile has is passed over. */
export function chosenIn(search: string, tiles: readonly Facts[]): Choice {
  const asked = new URLSearchParams(search)
  const choice: Partial<Record<Facet, string>> = {}
  for (const facet of facets) {
    const value = asked.get(facet) ?? ''
    if (value !== '' && tiles.some((tile) => tile[facet] === value)) choice[facet] = value
  }
  return choice
}

/** fits says whether a tile has all that is chosen. */
export function fits(tile: Facts, choice: Choice): boolean {
  return facets.every((facet) => choice[facet] === undefined || tile[facet] === choice[facet])
}

/** leaves says whether any tile would be left with a value in place of what is chosen of a facet. */
export function leaves(tiles: readonly Facts[], choice: Choice, facet: Facet, value: string): boolean {
  return tiles.some((tile) => fits(tile, { ...choice, [facet]: value }))
}

/** together takes a tile into the pair: a third takes the place of the older one, and one of the two is put back. */
export function together(pair: readonly string[], code: string): string[] {
  return pair.includes(code) ? pair.filter((other) => other !== code) : [...pair.slice(-1), code]
}

/** pairIn reads the pair from an address; of codes that hang nowhere, or more than two, the first are passed over. */
export function pairIn(search: string, codes: readonly string[]): string[] {
  const asked = (new URLSearchParams(search).get('beside') ?? '').split(',')
  return [...new Set(asked)].filter((code) => codes.includes(code)).slice(-2)
}

/** queryOf is the address's part from its question mark on; empty for the whole wall. */
export function queryOf(choice: Choice, pair: readonly string[]): string {
  const query = new URLSearchParams()
  for (const facet of facets) {
    const value = choice[facet]
    if (value !== undefined) query.set(facet, value)
  }
  if (pair.length > 0) query.set('beside', pair.join(','))
  const text = query.toString()
  return text === '' ? '' : `?${text}`
}

/** differ says whether two texts differ in more than white space. */
export function differ(one: string, other: string): boolean {
  const plain = (text: string): string => text.trim().replace(/\s+/g, ' ')
  return plain(one) !== plain(other)
}
