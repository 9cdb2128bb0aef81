// Which entries of a page have the words that somebody types, read as the search reads
// them. Nothing here knows the page.
import { fold, stem, wordsOf, type Rules } from './fold'
import { Vocabulary } from './vocabulary'

/** Entry is the words of an entry: those of its name, and all. */
export interface Entry {
  readonly name: string
  readonly text: string
}

/** Found is entries by number: those with all that was typed in the name, and others that have it. */
export interface Found {
  readonly named: readonly number[]
  readonly told: readonly number[]
}

/** rulesOf reads rules as the theme's words have them. */
export function rulesOf(passed = '', endings = ''): Rules {
  const parted = (text: string): string[] => text.split(' ').filter((word) => word !== '')
  return { passed: parted(passed), endings: endings.split('|').map(parted) }
}

export class Entries {
  readonly #vocabulary: Vocabulary
  readonly #stems: readonly { readonly name: ReadonlySet<string>; readonly text: ReadonlySet<string> }[]

  constructor(all: readonly Entry[], rules: Rules) {
    const known = new Map<string, string>()
    const stemOf = (word: string): string => {
      let found = known.get(word)
      if (found === undefined) known.set(word, found = stem(word, rules))
      return found
    }
    const stems = (text: string): Set<string> => new Set(wordsOf(fold(text)).map(stemOf))
    this.#stems = all.map(({ name, text }) => ({ name: stems(name), text: stems(`${name} ${text}`) }))
    this.#vocabulary = new Vocabulary([...new Set(known.values())].sort(), rules)
  }

  /** find looks for what was typed; nothing when that says nothing. */
  find(typed: string): Found | undefined {
    const wanted = this.#vocabulary.read(typed).map(({ read }) => [...read.keys()].map((n) => this.#vocabulary.terms[n] ?? ''))
    if (wanted.length === 0) return undefined
    const has = (stems: ReadonlySet<string> | undefined): boolean => wanted.every((terms) => terms.some((term) => stems?.has(term)))
    const all = [...this.#stems.keys()].filter((n) => has(this.#stems[n]?.text))
    return { named: all.filter((n) => has(this.#stems[n]?.name)), told: all.filter((n) => !has(this.#stems[n]?.name)) }
  }
}
