// The whole handbook on one page. Browsers number printed pages, but none can
// say in the contents on which page something will be. So the page is laid out
// once in columns of exactly the size of a sheet, with the styles of print: the
// column in which a chapter begins is the page on which it will be printed.
import * as words from '../words.yaml'
import { fill } from './say'

interface Sheet { readonly width: number; readonly height: number }

const millimetre = 96 / 25.4
const margin = { side: 25, top: 16, foot: 20 } // as in the style sheet, in mm

/** Room for words on a sheet, in CSS pixels. */
const sheets: Record<string, Sheet> = {
  a4: room(210, 297),
  letter: room(215.9, 279.4),
}

function room(width: number, height: number): Sheet {
  return { width: (width - 2 * margin.side) * millimetre, height: (height - margin.top - margin.foot) * millimetre }
}

const book = document.querySelector<HTMLElement>('.book')
const form = document.querySelector<HTMLFormElement>('.book-form')
if (book && form) begin(book, form)

function begin(book: HTMLElement, form: HTMLFormElement): void {
  form.hidden = false
  const count = (): void => {
    const paper = String(new FormData(form).get('paper'))
    document.documentElement.dataset['paper'] = paper
    const sheet = sheets[paper]
    const said = form.querySelector('[data-count]')
    if (!sheet || !said) return
    try {
      said.textContent = fill(words['book-pages'], number(book, sheet))
    } catch {
      said.textContent = words['book-uncounted'] ?? '' // opened as a file: browsers keep style sheets to themselves
    }
  }
  form.addEventListener('change', count)
  form.querySelector('[data-print]')?.addEventListener('click', () => print())
  const said = form.querySelector('[data-count]')
  if (said) said.textContent = words['book-counting'] ?? ''
  void document.fonts.ready.then(() => setTimeout(count))
}

/** number writes into the contents on which page each chapter begins, and gives the number of pages. */
function number(book: HTMLElement, sheet: Sheet): number {
  const marks = [...book.querySelectorAll<HTMLElement>('[data-page]')]
  const back = asPrinted(sheet)
  for (const mark of marks) mark.textContent = '000'
  const gap = 40
  const style = book.style
  style.cssText = `width:${sheet.width}px;height:${sheet.height}px;columns:auto ${sheet.width}px;column-gap:${gap}px;column-fill:auto`
  document.documentElement.classList.add('counting')
  const left = book.getBoundingClientRect().left
  const pageOf = (e: Element): number => Math.floor((e.getBoundingClientRect().left - left + gap / 2) / (sheet.width + gap)) + 1
  const pages = marks.map((mark) => {
    const to = document.getElementById(mark.closest('a')?.hash.slice(1) ?? '')
    return to ? pageOf(to) : 0
  })
  const all = Math.round((book.scrollWidth + gap) / (sheet.width + gap))
  document.documentElement.classList.remove('counting')
  style.cssText = ''
  back()
  marks.forEach((mark, n) => { mark.textContent = String(pages[n]) })
  return all
}

/**
 * asPrinted lets the rules for print hold on the screen, and those for a width
 * hold as if the screen were as wide as the sheet. It gives the way back.
 */
function asPrinted(sheet: Sheet): () => void {
  const changed: [MediaList, string][] = []
  const visit = (rules: CSSRuleList): void => {
    for (const rule of rules) {
      if (!(rule instanceof CSSMediaRule)) continue
      const was = rule.media.mediaText
      changed.push([rule.media, was])
      rule.media.mediaText = holds(was, sheet) ? 'all' : 'not all'
      visit(rule.cssRules)
    }
  }
  for (const style of document.styleSheets) visit(style.cssRules)
  return () => changed.forEach(([media, was]) => { media.mediaText = was })
}

/** holds says whether a media query would hold on a sheet of paper. */
function holds(query: string, sheet: Sheet): boolean {
  return query.split(',').some((one) => one.split(' and ').every((part) => {
    const text = part.trim()
    if (text === 'print' || text === 'all') return true
    const size = /\((min|max)-width:\s*([\d.]+)(px|r?em)\)/.exec(text)
    if (!size) return text.includes('light') // no dark scheme, no hover, no reduced motion on paper
    const at = Number(size[2]) * (size[3] === 'px' ? 1 : 16)
    return size[1] === 'min' ? sheet.width >= at : sheet.width <= at
  }))
}
