// What was published, as the service worker is told of it, and what follows from that:
// what a phone takes, what of it can be copied from the edition before, which file an
// address means. Nothing here touches a network or a cache.

/** Line is a published file: its address from the handbook's root, its size, the start of its SHA-256, and of a photo its number, the same in all widths. */
export type Line = readonly [address: string, bytes: number, digest: string, picture?: number]

/** Edition is all that was published but what phones never take. */
export interface Edition {
  readonly name: string
  readonly page: string // the address of the page that tells of it
  readonly whole: boolean // all but the rest is taken at once
  readonly core: readonly Line[] // taken with the handbook
  readonly units: readonly { readonly id: string, readonly lines: readonly Line[] }[] // each taken with the handbook, or when it was chosen
  readonly rest: readonly Line[] // kept once they were asked for
}

/** listed are the files of an edition by their addresses. */
export function listed(edition: Edition): Map<string, Line> {
  return new Map([...edition.core, ...edition.units.flatMap((unit) => unit.lines), ...edition.rest].map((line) => [line[0], line]))
}

/** wanted are the files that a phone takes with the handbook. */
export function wanted(edition: Edition, chosen: ReadonlySet<string>): Line[] {
  return [...edition.core, ...edition.units.filter((unit) => edition.whole || chosen.has(unit.id)).flatMap((unit) => unit.lines)]
}

/** Plan is how a phone comes to an edition: what it copies of the one before, and what it fetches. */
export interface Plan {
  readonly copied: readonly Line[]
  readonly fetched: readonly Line[]
}

/**
 * plan says how a phone takes an edition when it has another: had is what it holds of
 * that, digests by address. What somebody once asked for, and still is, stays kept.
 */
export function plan(edition: Edition, chosen: ReadonlySet<string>, had: ReadonlyMap<string, string>): Plan {
  const lines = new Map(wanted(edition, chosen).map((line) => [line[0], line]))
  for (const [address, line] of listed(edition)) if (had.has(address)) lines.set(address, line)
  const digests = new Set(had.values())
  const all = [...lines.values()]
  return { copied: all.filter((line) => digests.has(line[2])), fetched: all.filter((line) => !digests.has(line[2])) }
}

/** addressOf is the file that an address asks for, counted from the handbook's root; nothing outside the handbook. What calculators keep in it does not count. */
export function addressOf(url: URL, root: URL): string | undefined {
  if (url.origin !== root.origin || !url.pathname.startsWith(root.pathname)) return undefined
  try {
    const address = decodeURIComponent(url.pathname.slice(root.pathname.length))
    return address === '' || address.endsWith('/') ? `${address}index.html` : address
  } catch {
    return undefined // no text at all
  }
}

/** meant is the file of an address. Some servers leave ".html" out of it. */
export function meant(address: string, lines: ReadonlyMap<string, Line>): Line | undefined {
  return lines.get(address) ?? lines.get(`${address}.html`)
}

/** isFolder says whether an address means a folder's first page and lacks the stroke at its end, without which links lead elsewhere. */
export function isFolder(address: string, lines: ReadonlyMap<string, Line>): boolean {
  return !meant(address, lines) && lines.has(`${address}/index.html`)
}

/** urlOf is where a file of the handbook is. */
export function urlOf(address: string, root: URL): string {
  return new URL(address.split('/').map(encodeURIComponent).join('/'), root).href
}

/** digestOf is a file's digest as lines have it: the first 12 bytes of its SHA-256. */
export async function digestOf(bytes: ArrayBuffer): Promise<string> {
  const sum = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes), 0, 12)
  return btoa(String.fromCharCode(...sum)).replaceAll('+', '-').replaceAll('/', '_')
}

/** cacheOf is the name of the cache of an edition, and of what belongs to all editions of a handbook: several may be kept of one server. */
export function cacheOf(root: URL, edition: string): string {
  return `slipbook ${root.pathname} ${edition}`
}

/** isOf says whether a cache holds an edition of a handbook. */
export function isOf(root: URL, cache: string): boolean {
  const [mark, path, ...rest] = cache.split(' ')
  return mark === 'slipbook' && path === root.pathname && rest.length === 1
}
