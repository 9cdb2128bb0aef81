// The service worker: it keeps the handbook on this phone, and answers from what is
// kept. An edition has a cache of its own, which is filled and checked as a whole
// before the worker of that edition may begin; whatever goes wrong on the way leaves
// the edition before as it is. The generator writes the list of all files before this.
import { addressOf, cacheOf, digestOf, isFolder, isOf, listed, meant, plan, urlOf, wanted, type Edition, type Line } from './edition'
import type { Amount, Asked, Failure, News, State, Told } from './messages'

declare const self: ServiceWorkerGlobalScope
declare global {
  var edition: Edition
}

const { edition } = globalThis
const lines = listed(edition)
const root = new URL(self.registration.scope)
const own = cacheOf(root, edition.name)
const common = cacheOf(root, '') // holds which units were chosen, for every edition; no edition has so short a name
const record = urlOf('.kept', root) // in a cache that is whole: when it was made, and the digests of its files; no page has such a name
const together = 6 // fetched at once
const pauses = [0, 1000, 4000] // milliseconds before each try: a bench has one bar of signal

let dropped = false // the reader wants nothing kept

/** Trouble is what stops the taking of an edition. */
class Trouble extends Error {
  readonly why: Failure

  constructor(why: Failure, what: string) {
    super(`${what}: ${why}`)
    this.why = why
  }
}

/** Record is what stands in a cache that is whole. */
interface Record {
  readonly taken: number
  readonly digests: readonly (readonly [string, string])[]
}

async function tell(told: Told): Promise<void> {
  for (const client of await self.clients.matchAll({ includeUncontrolled: true, type: 'window' })) client.postMessage(told)
}

/** cachesOfEditions lists this handbook's caches but the common one. */
async function cachesOfEditions(): Promise<string[]> {
  return (await caches.keys()).filter((name) => isOf(root, name) && name !== common)
}

/** find looks into a cache without making it. */
function find(address: string, cacheName: string): Promise<Response | undefined> {
  return caches.match(address, { cacheName, ignoreVary: true })
}

async function recordIn(name: string): Promise<Record | undefined> {
  const found = await find(record, name)
  return found ? await found.json() as Record : undefined
}

async function chosen(): Promise<Set<string>> {
  const found = await find(record, common)
  return new Set(found ? await found.json() as string[] : [])
}

/** tidy drops what an edition left half made, but for this one, whose files were checked one by one. */
async function tidy(): Promise<void> {
  for (const name of await cachesOfEditions()) if (name !== own && !await recordIn(name)) await caches.delete(name)
}

/** fetched takes one file from the server, as it was published, or tells why not. */
async function fetched(line: Line): Promise<Response> {
  const [address,, digest] = line
  let failure: Failure = 'network'
  for (const [n, pause] of pauses.entries()) {
    if (failure === 'bytes' && n > 1) break // a server that answers wrongly twice does so again
    if (n > 0 && failure === 'network') await new Promise((done) => setTimeout(done, pause))
    if (dropped) break
    try {
      const response = await fetch(urlOf(address, root), { cache: n === 0 ? 'no-cache' : 'reload', credentials: 'same-origin' })
      const bytes = await response.arrayBuffer()
      if (response.ok && await digestOf(bytes) === digest) return again(response, bytes)
      failure = 'bytes'
    } catch {
      failure = 'network'
    }
  }
  throw new Trouble(failure, address)
}

/** again is a response made anew: one that a server led to from elsewhere answers for no page. */
function again(response: Response, bytes: ArrayBuffer): Response {
  const headers = new Headers(response.headers)
  for (const name of ['content-encoding', 'content-length', 'vary']) headers.delete(name)
  return new Response(bytes, { headers })
}

function json(it: unknown): Response {
  return new Response(JSON.stringify(it))
}

/** put keeps a file of this edition. */
async function put(cache: Cache, line: Line, response: Response): Promise<void> {
  try {
    await cache.put(urlOf(line[0], root), response)
  } catch {
    throw new Trouble('room', line[0])
  }
}

/** take fills a cache with files, several at once. What it holds already it keeps. */
async function take(cache: Cache, todo: readonly Line[]): Promise<void> {
  const queue = [...todo]
  let done = 0
  let failed = false
  const work = async (): Promise<void> => {
    for (let line = queue.shift(); line && !failed; line = queue.shift()) {
      try {
        if (!await cache.match(urlOf(line[0], root), { ignoreVary: true })) await put(cache, line, await fetched(line))
      } catch (trouble) {
        failed = true
        throw trouble
      }
      if (++done % 10 === 0) await tell({ taking: [done, todo.length] })
    }
  }
  const ends = await Promise.allSettled(Array.from({ length: together }, work)) // nothing is put after the first trouble was told
  const trouble = ends.find((end) => end.status === 'rejected')
  if (trouble) throw trouble.reason
}

/** heldBefore is what the whole editions on this phone hold: digests by address, and by digest where to find a file of it. */
async function heldBefore(): Promise<{ had: Map<string, string>, where: Map<string, readonly [cache: string, url: string]> }> {
  const had = new Map<string, string>()
  const where = new Map<string, readonly [string, string]>()
  for (const name of await cachesOfEditions()) {
    const digests = new Map((await recordIn(name))?.digests)
    if (digests.size === 0) continue // it is half made
    for (const { url } of await (await caches.open(name)).keys()) {
      const address = addressOf(new URL(url), root) ?? ''
      const digest = digests.get(address)
      if (digest === undefined) continue
      had.set(address, digest)
      where.set(digest, [name, url])
    }
  }
  return { had, where }
}

/** install takes this edition whole. */
async function install(): Promise<void> {
  await tidy()
  const { had, where } = await heldBefore()
  const { copied, fetched: todo } = plan(edition, await chosen(), had)
  const cache = await caches.open(own)
  for (const line of copied) {
    const [name, url] = where.get(line[2]) ?? [own, '']
    const found = name !== own && await find(url, name)
    if (found) await put(cache, line, found)
  }
  await take(cache, [...copied, ...todo])
  if (dropped) throw new Trouble('network', 'dropped')
  const made: Record = { taken: Date.now(), digests: [...lines.values()].map(([address,, digest]) => [address, digest]) }
  await cache.put(record, json(made))
}

function why(trouble: unknown): Failure {
  return trouble instanceof Trouble ? trouble.why : 'room' // caches themselves refuse for want of room
}

/** failed tells pages why, and leaves no half of an edition where there is no room for it. */
async function failed(trouble: unknown): Promise<never> {
  if (why(trouble) === 'room' || dropped) await caches.delete(own)
  await tell({ failed: why(trouble) })
  throw trouble
}

/** begin drops the editions before, and takes the pages that are open along. */
async function begin(): Promise<void> {
  const before = (await cachesOfEditions()).filter((name) => name !== own)
  await Promise.all(before.map((name) => caches.delete(name)))
  await self.clients.claim()
  const news: News = edition.whole ? 'ready' : 'part'
  if (before.length === 0) await tell({ news })
}

/** answer gives what is kept; else what the server has; else, where a page was wanted, the page that says so. */
async function answer(event: FetchEvent, address: string): Promise<Response> {
  const line = meant(address, lines)
  const kept = line && await find(urlOf(line[0], root), own)
  if (kept) return kept
  if (isFolder(address, lines)) return Response.redirect(urlOf(`${address}/`, root))
  try {
    const response = await fetch(event.request)
    if (line && response.ok) event.waitUntil(keep(line, response.clone()))
    return response
  } catch (trouble) {
    const other = line?.[3] && await otherWidth(line[3])
    if (other) return other
    if (event.request.mode !== 'navigate') throw trouble
    return Response.redirect(`${urlOf(edition.page, root)}?away=${encodeURIComponent(address)}`)
  }
}

/** keep keeps a file that somebody asked for, if it is the one that was published. Another means that there is a new edition. */
async function keep(line: Line, response: Response): Promise<void> {
  const bytes = await response.arrayBuffer()
  if (await digestOf(bytes) !== line[2]) return void self.registration.update().catch(() => undefined)
  if (!dropped && await recordIn(own)) await put(await caches.open(own), line, again(response, bytes)).catch(() => undefined)
}

/** otherWidth finds a photo in another width than was asked for. */
async function otherWidth(picture: number): Promise<Response | undefined> {
  for (const [address,,, of] of lines.values()) {
    const found = of === picture && await find(urlOf(address, root), own)
    if (found) return found
  }
  return undefined
}

function amount(of: Iterable<Line>): Amount {
  let pages = 0
  let bytes = 0
  for (const [address, size] of of) {
    pages += Number(address.endsWith('.html'))
    bytes += size
  }
  return { pages, bytes }
}

/** state is what this phone holds of this edition; nothing before it is whole. */
async function state(): Promise<State | null> {
  const made = await recordIn(own)
  if (!made) return null
  const keys = await (await caches.open(own)).keys()
  const here = keys.map(({ url }) => lines.get(addressOf(new URL(url), root) ?? '')).filter((line) => line !== undefined)
  const found = new Set(here)
  const some = await chosen()
  return {
    edition: edition.name, whole: edition.whole, taken: made.taken, kept: amount(here), all: amount(lines.values()),
    units: edition.units.map(({ id, lines: of }) => ({ id, chosen: some.has(id), here: of.every((line) => found.has(lines.get(line[0]) ?? line)), ...amount(of) })),
  }
}

/** choose keeps these units, and drops those that were chosen before and are no more. A page that somebody opened otherwise stays. */
async function choose(units: readonly string[]): Promise<void> {
  const cache = await caches.open(own)
  const before = await chosen()
  await (await caches.open(common)).put(record, json(units))
  for (const unit of edition.units) {
    if (!before.has(unit.id) || units.includes(unit.id)) continue
    for (const [address] of unit.lines) await cache.delete(urlOf(address, root))
  }
  await take(cache, wanted(edition, new Set(units)))
}

let turn = Promise.resolve() // what is asked for by and by is done one after the other

async function hear(asked: Asked): Promise<void> {
  let trouble: unknown
  const done = (work: () => Promise<void>): Promise<void> => (turn = turn.then(work).catch((it: unknown) => { trouble = it }))
  switch (asked.ask) {
    case 'over':
      return self.skipWaiting()
    case 'drop':
      dropped = true
      return
    case 'take':
      dropped = false
      await done(install)
      break
    case 'units':
      await done(() => choose(asked.units))
  }
  const now = await state()
  await tell(trouble ? { state: now, failed: why(trouble) } : { state: now })
}

self.addEventListener('install', (event) => event.waitUntil(install().catch(failed)))
self.addEventListener('activate', (event) => event.waitUntil(begin()))
self.addEventListener('message', (event) => event.waitUntil(hear(event.data as Asked)))
self.addEventListener('fetch', (event) => {
  const address = event.request.method === 'GET' && !dropped ? addressOf(new URL(event.request.url), root) : undefined
  if (address !== undefined) event.respondWith(answer(event, address))
})
