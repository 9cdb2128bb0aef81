// The calculators themselves: Go compiled to WebAssembly, the same code that
// the handbook was printed with. One of them serves every form of a page.
import { system } from './system'

/** Work answers an encoded request. It throws when the engine is broken. */
export type Work = (request: string) => URLSearchParams

/** Where the engine is and what it must know, as the page's script tag says. */
export interface Source {
  readonly engine: string // gzipped WebAssembly, for http and https
  readonly carried: string // a classic script with the same bytes, for file:
  readonly settings: string // the course's own constants, encoded
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
  /** Set by the carried script: base64 of the gzipped engine. */
  var carriedCalculators: string | undefined
}

/** load fetches, compiles and starts the engine; it rejects when it cannot. */
export async function load(source: Source): Promise<Work> {
  const packed = location.protocol === 'file:' ? await carried(source.carried) : await fetched(source.engine)
  const module = await WebAssembly.compile(await inflated(packed))
  const instance = await WebAssembly.instantiate(module, system(module, () => reactor.memory))
  const reactor = instance.exports as unknown as Reactor
  reactor._initialize()
  call(reactor, 'configure', source.settings)
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

async function fetched(address: string): Promise<Uint8Array<ArrayBuffer>> {
  const response = await fetch(address)
  if (!response.ok) throw new Error(`no calculators at ${address}: ${response.status}`)
  return new Uint8Array(await response.arrayBuffer())
}

/** carried runs the script that carries the engine; a page opened as a file may not fetch. */
async function carried(address: string): Promise<Uint8Array<ArrayBuffer>> {
  const script = document.createElement('script')
  await new Promise((resolve, reject) => {
    script.onload = resolve
    script.onerror = reject
    script.src = address
    document.head.append(script)
  })
  const text = atob(globalThis.carriedCalculators ?? '')
  globalThis.carriedCalculators = undefined
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0))
}

/** inflated undoes gzip, unless a server has done so on the way. */
async function inflated(bytes: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer> {
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes.buffer
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))
  return new Response(stream).arrayBuffer()
}
