// The calculators themselves: Go compiled to WebAssembly, the same code that
// the handbook was printed with. One of them serves every form of a page.
import { run } from './run'
import { system } from './system'

/** Work answers an encoded request. It throws when the engine is broken. */
export type Work = (request: string) => URLSearchParams

/** Where the engine is and what it must know, as the page's script tag says. */
export interface Source {
  readonly engine: string // gzipped WebAssembly, for http and https
  readonly carried: string // a classic script with the same bytes, for file:
  readonly settings: string // the course's own constants, encoded
  readonly words: string // what answers say, likewise packed and carried
  readonly wordsCarried: string
  readonly table: string // the course's decoration table, likewise; empty where nothing is planned
  readonly tableCarried: string
}

/** The exports of the Go program. Lengths and addresses are in bytes. */
interface Reactor {
  readonly memory: WebAssembly.Memory
  _initialize(): void
  reserve(length: number): number
  configure(length: number): number
  work(length: number): number
}

declare global {
  /** Set by a script that carries data: base64 of gzipped bytes. */
  var carried: string | undefined
}

/** load fetches, compiles and starts the engine; it rejects when it cannot. */
export async function load(source: Source): Promise<Work> {
  const [engine, words, table] = await Promise.all([
    taken(source.engine, source.carried), setting('words', source.words, source.wordsCarried), setting('table', source.table, source.tableCarried),
  ])
  const module = await WebAssembly.compile(engine)
  const instance = await WebAssembly.instantiate(module, system(module, () => reactor.memory))
  const reactor = instance.exports as unknown as Reactor
  reactor._initialize()
  call(reactor, 'configure', source.settings + words + table)
  return (request) => new URLSearchParams(call(reactor, 'work', request))
}

/**
 * call puts a text into the engine's buffer and takes the answer from there.
 * The buffer may move and memory may grow meanwhile, which leaves old views
 * empty: address and view are taken anew.
 */
function call(reactor: Reactor, name: 'configure' | 'work', text: string): string {
  const bytes = new TextEncoder().encode(text)
  const to = reactor.reserve(bytes.length)
  if (to === 0) throw new Error(`${bytes.length} bytes are too much for the calculators`)
  new Uint8Array(reactor.memory.buffer).set(bytes, to)
  const length = reactor[name](bytes.length)
  if (length < 0) throw new Error(`the calculators refused to ${name}`)
  return new TextDecoder().decode(new Uint8Array(reactor.memory.buffer, reactor.reserve(0), length))
}

/** setting is a parcel as a further setting of that name; nothing where there is no parcel. */
async function setting(name: string, packed: string, script: string): Promise<string> {
  return packed ? `&${name}=${encodeURIComponent(new TextDecoder().decode(await taken(packed, script)))}` : ''
}

/** taken gives the bytes of a parcel: fetched, or from the script that carries them where pages may not fetch. */
export async function taken(packed: string, script: string): Promise<ArrayBuffer> {
  return inflated(location.protocol === 'file:' ? await carried(script) : await fetched(packed))
}

async function fetched(address: string): Promise<Uint8Array<ArrayBuffer>> {
  const response = await fetch(address)
  if (!response.ok) throw new Error(`nothing at ${address}: ${response.status}`)
  return new Uint8Array(await response.arrayBuffer())
}

/** Scripts that carry data share one global: each waits until the one before it was taken. */
let turn: Promise<unknown> = Promise.resolve()

function carried(address: string): Promise<Uint8Array<ArrayBuffer>> {
  const mine = turn.then(async () => {
    await run(address)
    const text = atob(globalThis.carried ?? '')
    globalThis.carried = undefined
    return Uint8Array.from(text, (letter) => letter.charCodeAt(0))
  })
  turn = mine.catch(() => undefined)
  return mine
}

/** inflated undoes gzip, unless a server has done so on the way. */
async function inflated(bytes: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer> {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes.buffer
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))
  return new Response(stream).arrayBuffer()
}
