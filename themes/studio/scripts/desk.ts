// The desk: everything that a page with calculators runs.
import * as words from '../words.yaml'
import type { Tool } from './bench'
import { load, type Work } from './engine'
import { Form, type More } from './form'
import { recall } from './kept'
import { backToPlace, watchPlace } from './place'
import { dress, run } from './run'
import { here, thin } from './thin'

/** open makes every calculator of the page work, as its script tag says. */
export function open(more?: More): void {
  const tag = document.currentScript
  if (!tag) return
  const { engine = '', carried = '', words: sayings = '', wordsCarried = '', table = '', tableCarried = '', bench = '', benchStyle = '', size = '' } = tag.dataset
  const elements = [...document.querySelectorAll<HTMLFormElement>('form[data-calculator]')]
  const fail = (): void => forms.forEach((form) => {
    const failed = form.section.querySelector<HTMLElement>('[data-failed]')
    if (failed) failed.textContent = words['calculator-failed'] ?? ''
    form.stop()
  })
  const forms = elements.map((element) => new Form(element, fail, more))
  const source = {
    engine, carried, settings: elements[0]?.dataset['settings'] ?? '', words: sayings, wordsCarried, table, tableCarried,
  }

  const wait = (coming: boolean): void => forms.forEach((f) => f.wait(coming, 10 * Math.round(Number(size) / 10_000)))
  wait(true)
  watchPlace()
  restore(forms)
  const bring = tools(forms, bench, benchStyle)

  let loading: Promise<void> | undefined
  const start = (work: Work): void => {
    forms.forEach((f) => f.start(work))
    quietly(bring)
  }
  const begin = (): Promise<void> => {
    if (!loading) wait(true)
    return (loading ??= load(source).then(start, fail).then(backToPlace))
  }
  // On a thin line it comes when it is wanted, unless it is here already. Who opens a
  // calculator of a lesson, or a link with numbers, wants it.
  const wanted = (): boolean => forms.some((f) => f.restored || f.element.closest('[data-fold][open]'))
  const soon = async (): Promise<void> => {
    if (!thin() || wanted() || await here(engine)) void begin()
    else if (!loading) wait(false)
  }
  // The page is drawn first; a finger in a box does not wait for that.
  elements.forEach((element) => element.addEventListener('focusin', begin, { once: true }))
  const drawn = (): void => quietly(soon)
  if (document.readyState === 'complete') drawn()
  else window.addEventListener('load', drawn, { once: true })
  window.addEventListener('pageshow', (event) => event.persisted && forms.forEach((f) => f.update()))
}

/** quietly does something once the browser has nothing else to do. */
function quietly(what: () => unknown): void {
  if ('requestIdleCallback' in window) requestIdleCallback(what, { timeout: 2000 })
  else setTimeout(what, 200)
}

/** restore fills the form that the page's address names: the one at its fragment, else the first of the name. */
function restore(forms: readonly Form[]): void {
  const request = new URLSearchParams(location.search)
  const named = forms.filter((f) => f.name === request.get('calculator'))
  const meant = named.find((f) => f.part === location.hash.slice(1)) ?? named[0]
  meant?.restore(request, (history.state as { typed?: boolean } | null)?.typed === true)
}

/**
 * tools offers what few readers want. Its script and its styles come when one of the
 * tools is wanted, or was in use before a reload, and else by what is returned: once
 * the calculators are there, since a bench may be out of reach of the network later.
 */
function tools(forms: readonly Form[], script: string, style: string): () => unknown {
  let loading: Promise<unknown> | undefined
  const fetched = (): Promise<unknown> => {
    loading ??= Promise.all([dress(style), run(script)])
    loading.catch(() => (loading = undefined))
    return loading
  }
  for (const form of forms) {
    const use = async (tool: Tool): Promise<void> => {
      const failed = (): void => form.tell(words['calculator-bench-failed'])
      const late = setTimeout(failed, 8000)
      try {
        await fetched()
        if (!globalThis.atBench) throw new Error('the script came, and did not run')
        globalThis.atBench(form, tool)
      } catch {
        failed()
      }
      clearTimeout(late)
    }
    for (const button of form.section.querySelectorAll<HTMLElement>('[data-tool]')) {
      // Browsers keep a screen awake only for pages that came over https, or from the same machine.
      if (button.dataset['tool'] === 'awake') button.hidden = !('wakeLock' in navigator)
      button.addEventListener('click', () => void use(button.dataset['tool'] as Tool))
    }
    if (recall(form.part)) void use('again').then(backToPlace)
  }
  return () => fetched().catch(() => undefined)
}
