// The theme's words, of which a script takes the few that it says. The press
// refuses to bundle a word that words.yaml lacks. Name each word in full, as in
// words["calculator-wait"]: only then are the others left out of the bundle.
declare module '*/words.yaml' {
  const words: Readonly<Record<string, string>>
  export = words
}
