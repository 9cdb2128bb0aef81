// What is found for some words: the index is read piece by piece, as the words want it,
// and what stands there is put in order. Nothing here knows the page.
import type { Rules } from './fold'
import { Vocabulary, type Reading, type Wanted } from './vocabulary'

/** Piece is a file of the index, from its first word or place on. */
export interface Piece {
  readonly first: number
  readonly packed: string
  readonly carried: string
}

/** Head is what the index says first; generator/press/find/pack.go writes it. */
export interface Head extends Rules {
  readonly kinds: readonly { readonly name: string; readonly weight: number; readonly count: number }[]
  readonly count: number
  readonly parts: readonly (readonly [number, number])[] // places that have parts, which follow them
  readonly words: string
  readonly lists: readonly Piece[]
  readonly places: readonly Piece[]
}

/** Place is what was found. */
export interface Place {
  readonly name: string
  readonly part: string // the heading; empty of a whole page
  readonly number: string // of the lesson
  readonly address: string // from the handbook's root
  readonly line: string
  readonly kind: string // in a word
}

/** Found is the places, the best first, each read when it is wanted. */
export interface Found {
  readonly places: readonly number[]
  readonly terms: ReadonlySet<string> // stems that were looked for, to be marked
}

/** Take gives the bytes of a piece. */
export type Take = (piece: Piece) => Promise<ArrayBuffer>

// Where a word stands in a place: generator/press/find/index.go has the same numbers.
const inHeading = 6
const worth = [1, 10, 10, 10, 10, 10, 5] // of a word there
const wholeName = 1.6 // times, where all words of the name are looked for
const missing = 3 // the power to which the share of words that are there counts
const ofParts = 0.65 // of what a word is worth where it stands in a part of the place
const countOfParts = 0.7
const ofWhole = 0.3 // of what it is worth in the name of which the place is a part
const countOfWhole = 0.9
const roomForPlaces = 2 ** 20
const ofOnePage = 2 // places that are shown

export class Lookup {
  readonly #head: Head
  readonly #take: Take
  readonly #vocabulary: Vocabulary
  readonly #lists = new Map<number, Promise<Uint32Array[]>>() // by piece
  readonly #rows = new Map<number, Promise<string[]>>()
  readonly #weights: Float32Array // by place
  readonly #kinds: Uint8Array
  readonly #pages: Int32Array // the place that each is a part of, or has parts itself; else -1

  constructor(head: Head, take: Take) {
    this.#head = head
    this.#take = take
    this.#vocabulary = new Vocabulary(unfronted(head.words), head)
    this.#weights = new Float32Array(head.count)
    this.#kinds = new Uint8Array(head.count)
    this.#pages = new Int32Array(head.count).fill(-1)
    for (const [whole, n] of head.parts) this.#pages.fill(whole, whole, whole + n + 1)
    let at = 0
    head.kinds.forEach(({ weight, count }, kind) => {
      this.#weights.fill(weight, at, at + count)
      this.#kinds.fill(kind, at, at + count)
      at += count
    })
  }

  /** find looks for what was typed; the last word may be unfinished. */
  async find(typed: string): Promise<Found> {
    const wanted = this.#vocabulary.read(typed)
    const lists = new Map<number, Uint32Array>()
    const numbers = [...new Set(wanted.flatMap(({ read }) => [...read.keys()]))]
    await Promise.all(numbers.map(async (n) => lists.set(n, await this.#list(n))))
    return { places: this.#ranked(wanted, lists), terms: new Set(numbers.map((n) => this.#vocabulary.terms[n] ?? '')) }
  }

  /** place reads what a place is. */
  async place(number: number): Promise<Place> {
    const at = pieceOf(this.#head.places, number)
    let rows = this.#rows.get(at)
    if (!rows) this.#rows.set(at, rows = this.#bytes(this.#head.places, at).then((bytes) => new TextDecoder().decode(bytes).split('\n')))
    const from = this.#head.places[at]?.first ?? 0
    const row = (n: number): string[] => all[n - from]?.split('\t') ?? []
    const all = await rows
    const [own = '', part = '', , id = '', line = ''] = row(number)
    let whole = number
    while (part && whole > from && row(whole)[1]) whole--
    const [name = own, , lesson = '', page = ''] = row(whole)
    const address = part ? `${page}#${id || slug(part)}` : page
    return { name, part, number: lesson, address, line, kind: this.#head.kinds[this.#kinds[number] ?? 0]?.name ?? '' }
  }

  async #bytes(pieces: readonly Piece[], at: number): Promise<Uint8Array> {
    const piece = pieces[at]
    return new Uint8Array(piece ? await this.#take(piece) : [])
  }

  /** #list reads where a stem stands: pairs of a place and where in it, as in the index. */
  async #list(term: number): Promise<Uint32Array> {
    const at = pieceOf(this.#head.lists, term)
    let lists = this.#lists.get(at)
    if (!lists) this.#lists.set(at, lists = this.#bytes(this.#head.lists, at).then(unpacked))
    return (await lists)[term - (this.#head.lists[at]?.first ?? 0)] ?? new Uint32Array()
  }

  /** #ranked puts places in order: first those with all words, and of these where the words say most. */
  #ranked(wanted: readonly Wanted[], lists: ReadonlyMap<number, Uint32Array>): number[] {
    if (wanted.length === 0) return []
    const { count } = this.#head
    const sum = new Float32Array(count)
    const matched = new Float32Array(count) // words, of which some count for less
    const named = new Uint8Array(count) // words that stand in a name
    const longest = new Uint8Array(count) // name of which one does
    for (const { read } of wanted) {
      const one = this.#weighed(read, lists)
      for (let place = 0; place < count; place++) {
        const value = one.worth[place] ?? 0
        if (value === 0) continue
        sum[place] = (sum[place] ?? 0) + value
        matched[place] = (matched[place] ?? 0) + (one.counts[place] ?? 0)
        const length = one.names[place] ?? 0
        if (length === 0) continue
        named[place] = (named[place] ?? 0) + 1
        longest[place] = Math.max(longest[place] ?? 0, length)
      }
    }
    const ranks: number[] = [] // of what is found: how well, and which place
    for (let place = 0; place < count; place++) {
      const share = (matched[place] ?? 0) / wanted.length
      if (share === 0) continue
      const whole = (longest[place] ?? 0) > 0 && (named[place] ?? 0) >= (longest[place] ?? 0)
      const score = (sum[place] ?? 0) * (this.#weights[place] ?? 1) * (whole ? wholeName : 1) * share ** missing
      ranks.push(Math.round(score * 1000) * roomForPlaces + roomForPlaces - 1 - place)
    }
    const sorted = Float64Array.from(ranks).sort().reverse() // numbers are sorted by the browser itself, fast
    return this.#thinned(Array.from(sorted, (rank) => roomForPlaces - 1 - rank % roomForPlaces))
  }

  /** #weighed says of each place what a word is worth there, how far it counts, and the length of the name it is of. */
  #weighed(read: Reading, lists: ReadonlyMap<number, Uint32Array>): { worth: Float32Array; counts: Float32Array; names: Uint8Array } {
    const { count, parts } = this.#head
    const best = new Float32Array(count)
    const counts = new Float32Array(count)
    const names = new Uint8Array(count)
    for (const [term, fit] of read) {
      const list = lists.get(term) ?? new Uint32Array()
      const rare = Math.log(1 + count / (1 + list.length))
      for (const entry of list) {
        const [place, field] = [entry >>> 3, entry & 7]
        best[place] = Math.max(best[place] ?? 0, fit * rare * (worth[field] ?? 0))
        counts[place] = Math.max(counts[place] ?? 0, fit)
        if (field > 0 && field < inHeading) names[place] = Math.max(names[place] ?? 0, field)
      }
    }
    for (const [whole, n] of parts) {
      const own = best[whole] ?? 0
      const ownCount = countOfWhole * (counts[whole] ?? 0)
      const named = (names[whole] ?? 0) > 0
      for (let part = whole + 1; part <= whole + n; part++) {
        const value = best[part] ?? 0
        if (value > 0) { // what stands in a part stands in the whole
          best[whole] = Math.max(best[whole] ?? 0, ofParts * value)
          counts[whole] = Math.max(counts[whole] ?? 0, countOfParts * (counts[part] ?? 0))
        }
        if (named) { // and the parts are of what the whole is called
          best[part] = Math.max(value, ofWhole * own)
          counts[part] = Math.max(counts[part] ?? 0, ownCount)
        }
      }
    }
    return { worth: best, counts, names }
  }

  /** #thinned leaves of each page and its parts the best two. */
  #thinned(found: readonly number[]): number[] {
    const shown = new Map<number, number>()
    return found.filter((place) => {
      const page = this.#pages[place] ?? -1
      const before = shown.get(page) ?? 0
      shown.set(page, before + 1)
      return page < 0 || before < ofOnePage
    })
  }
}

/** pieceOf is the piece in which something stands. */
function pieceOf(pieces: readonly Piece[], number: number): number {
  let at = pieces.length - 1
  while (at > 0 && (pieces[at]?.first ?? 0) > number) at--
  return at
}

/** unfronted reads front-coded words: the sign says how many letters are those of the word before. */
export function unfronted(text: string): string[] {
  let before = ''
  return text.split('\n').slice(0, -1).map((line) => before = before.slice(0, line.charCodeAt(0) - 0x30) + line.slice(1))
}

/** unpacked reads lists: how long each is, then the steps from place to place with where in it. */
export function unpacked(bytes: Uint8Array): Uint32Array[] {
  let at = 0
  const next = (): number => {
    let value = 0
    for (let shift = 0; ; shift += 7) {
      const byte = bytes[at++] ?? 0
      value |= (byte & 0x7f) << shift
      if (byte < 0x80) return value
    }
  }
  const lists: Uint32Array[] = []
  while (at < bytes.length) {
    const list = new Uint32Array(next())
    let place = 0
    list.forEach((_, n) => {
      const step = next()
      place += step >>> 3
      list[n] = place << 3 | step & 7
    })
    lists.push(list)
  }
  return lists
}

/** slug is the id of a heading, where the index does not say another. */
export function slug(heading: string): string {
  return heading.toLowerCase().replace(/['’]/g, '').match(/[\p{L}\p{Nd}\p{M}]+/gu)?.join('-') ?? ''
}
