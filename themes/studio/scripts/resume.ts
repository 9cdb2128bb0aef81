// On the pages from which one goes to work: what is open on this phone, to go on with.
import * as words from '../words.yaml'
import { openWork, type Work } from './open'
import { fill, make } from './say'

const root = new URL('..', (document.currentScript as HTMLScriptElement).src).pathname // of the handbook: shared files stand in a folder of it

/** kept lists all that the browser keeps for this server; nothing where it keeps nothing. */
function kept(): [string, string][] {
  try {
    return Object.keys(localStorage).map((key) => [key, localStorage.getItem(key) ?? ''])
  } catch {
    return []
  }
}

function line({ name, address, step }: Work): HTMLElement {
  const link = make('a', '', fill(words['open-go-on'], name))
  link.href = address
  return make('p', 'reckon-linked', step > 0 ? fill(words['open-lesson'], step) : words['open-sheet'], link)
}

function show(): void {
  document.querySelector('[data-open-work]')?.replaceChildren(...openWork(kept(), root).map(line))
}

show()
addEventListener('pageshow', (event) => event.persisted && show())
