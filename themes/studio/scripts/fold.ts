// How words are made alike, so that "Slipped" finds "slip". The index was made by the
// same rules (generator/press/find/fold.go), which it holds itself: they are of its
// language.

/** Rules is what the index says of its language. */
export interface Rules {
  readonly passed: readonly string[] // words that say nothing of what is looked for
  readonly endings: readonly (readonly string[])[] // of each group the first that fits is taken off
}

/** fold takes capitals, accents and apostrophes away. */
export function fold(text: string): string {
  return text.normalize('NFD').toLowerCase().replace(/[\p{M}'’]/gu, '')
}

const apart = /\p{L}+|\p{Nd}+(?:[.,]\p{Nd}+)*/gu

/** wordsOf lists the words in a folded text. */
export function wordsOf(folded: string): string[] {
  return folded.match(apart) ?? []
}

/** stem takes off a folded word what changes with its use, and makes doubled letters single. */
export function stem(word: string, { endings }: Rules): string {
  if (/^\p{Nd}/u.test(word)) return word.replaceAll(',', '.')
  endings.forEach((group, n) => {
    const ending = group.find((e) => word.endsWith(e) && word.length - e.length >= (n > 0 ? 2 : 3) && word.at(-e.length - 1) !== e[0])
    if (ending) word = word.slice(0, -ending.length)
  })
  return single(word)
}

/** single makes doubled letters single. */
export function single(word: string): string {
  return word.replace(/(.)\1+/gu, '$1')
}

/**
 * near says whether a word is another but for one letter put in, left out, another, or
 * changed places with its neighbour; as a prefix also whether it begins so.
 */
export function near(word: string, other: string, prefix: boolean): boolean {
  const most = word.length + 1
  if (other.length < word.length - 1 || !prefix && other.length > most) return false
  let at = 0
  while (at < word.length && word[at] === other[at]) at++
  const same = (w: number, o: number): boolean =>
    prefix ? other.startsWith(word.slice(w), o) : word.length - w === other.length - o && word.slice(w) === other.slice(o)
  return same(at, at) || same(at + 1, at + 1) || same(at, at + 1) || same(at + 1, at) ||
    word[at] === other[at + 1] && word[at + 1] === other[at] && at + 1 < word.length && same(at + 2, at + 2)
}
