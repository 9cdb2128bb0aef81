/** fill puts values into the places {1}, {2} … of the theme's words. */
export function fill(words: string | undefined, ...values: (string | number)[]): string {
  return (words ?? '').replace(/\{(\d)\}/g, (_, n: string) => String(values[Number(n) - 1] ?? ''))
}

/** make gives an element with words, or other elements, in it. */
export function make<K extends keyof HTMLElementTagNameMap>(tag: K, name: string, ...inside: (string | Node | undefined)[]): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag)
  if (name) element.className = name
  element.append(...inside.filter((i) => i !== undefined))
  return element
}

/** offer makes a line that offers something, such as to undo. Where the reader was is counted without it. */
export function offer(...inside: (string | Node | undefined)[]): HTMLElement {
  const line = make('p', 'reckon-linked', ...inside)
  line.dataset['offer'] = ''
  return line
}

/** button gives a button that does something. */
export function button(words: string | undefined, press: () => void): HTMLButtonElement {
  const made = make('button', '', words ?? '')
  made.type = 'button'
  made.addEventListener('click', press)
  return made
}
