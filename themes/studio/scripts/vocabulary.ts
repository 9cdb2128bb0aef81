// What typed words may mean in a list of stems: a stem itself, what it begins, or what is
// one mistyped letter away. The search reads words so, and the filters of pages do.
import { fold, near, single, stem, wordsOf, type Rules } from './fold'

/** Reading is one way to read a word that was typed: stems in the index, and how well each fits. */
export type Reading = Map<number, number>

/** Wanted is a word that was typed, or two that are read as one. */
export interface Wanted {
  readonly read: Reading
}

export class Vocabulary {
  readonly terms: readonly string[] // stems, sorted
  readonly #rules: Rules

  constructor(terms: readonly string[], rules: Rules) {
    this.terms = terms
    this.#rules = rules
  }

  /** read lists what each word that was typed may mean; the last may be unfinished. */
  read(typed: string): Wanted[] {
    const folded = fold(typed)
    const all = wordsOf(folded)
    const unfinished = /[\p{L}\p{Nd}]$/u.test(folded)
    const words = all.filter((word) => !this.#rules.passed.includes(word))
    const wanted = words.map((word, n) => ({ read: this.#read(word, unfinished && word === all.at(-1) && n === words.length - 1) }))
    this.#join(words, wanted)
    return wanted
  }

  /** #read lists the stems that a word may mean: itself, else what is near it. */
  #read(word: string, unfinished: boolean): Reading {
    const read: Reading = new Map()
    const own = stem(word, this.#rules)
    const exact = this.#at(own)
    if (exact >= 0) read.set(exact, 1)
    if (unfinished && word.length > 1) this.#begun(word, own, read)
    if (read.size > 0) return read
    if (word.length >= 4 && own.length >= 3) {
      for (const [n, term] of this.terms.entries()) {
        if (near(own, term, unfinished)) read.set(n, 0.7)
        else if (term.length >= 4 && own.length - term.length <= 3 && own.startsWith(term)) read.set(n, 0.6)
      }
      if (!unfinished) for (const n of this.#range(single(word))) read.set(n, 0.6)
    }
    return read
  }

  /** #begun adds the stems of words that begin as an unfinished one does. */
  #begun(word: string, own: string, read: Reading): void {
    const begin = single(word)
    for (const n of this.#range(begin)) if (!read.has(n)) read.set(n, 0.8 * Math.max(0.5, begin.length / (this.terms[n]?.length ?? 1)))
    for (const ending of this.#rules.endings.flat()) { // "glazin" is begun with "glaz"
      for (let n = 1; n < ending.length; n++) {
        const at = begin.endsWith(ending.slice(0, n)) ? this.#at(begin.slice(0, -n)) : -1
        if (at >= 0 && begin.length - n >= 3 && !read.has(at)) read.set(at, 0.8)
      }
    }
    for (const n of read.keys()) if (this.terms[n] === own) read.set(n, 1)
  }

  /** #join reads two words as one where the index has that, and one that it lacks as two. */
  #join(words: readonly string[], wanted: Wanted[]): void {
    words.forEach((word, n) => {
      const next = words[n + 1]
      const both = next === undefined ? -1 : this.#at(stem(word + next, this.#rules))
      if (both >= 0) {
        wanted[n]?.read.set(both, 1)
        wanted[n + 1]?.read.set(both, 1)
      }
    })
    for (let n = words.length - 1; n >= 0; n--) {
      const exact = [...wanted[n]?.read.values() ?? []].some((fit) => fit >= 0.7)
      const halves = exact ? undefined : this.#halves(words[n] ?? '')
      if (halves) wanted.splice(n, 1, ...halves)
    }
  }

  /** #halves finds two words that were written as one. */
  #halves(word: string): Wanted[] | undefined {
    for (let at = word.length - 3; at >= 3; at--) {
      const [first, second] = [this.#at(stem(word.slice(0, at), this.#rules)), this.#at(stem(word.slice(at), this.#rules))]
      if (first >= 0 && second >= 0) return [{ read: new Map([[first, 1]]) }, { read: new Map([[second, 1]]) }]
    }
    return undefined
  }

  /** #at is the number of a stem; below 0 where the index lacks it. */
  #at(term: string): number {
    const n = this.#first(term)
    return this.terms[n] === term ? n : -1
  }

  /** #first is the number of the first stem that is not before another. */
  #first(term: string): number {
    let [from, to] = [0, this.terms.length]
    while (from < to) {
      const middle = from + to >> 1
      if ((this.terms[middle] ?? '') < term) from = middle + 1
      else to = middle
    }
    return from
  }

  /** #range lists the stems that begin so. */
  *#range(begin: string): Generator<number> {
    for (let n = this.#first(begin); this.terms[n]?.startsWith(begin); n++) yield n
  }
}
