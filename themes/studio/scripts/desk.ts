// The desk: everything that a page with calculators runs.
import * as words from '../words.yaml'
import type { Tool } from './bench'
import { load, type Work } from './engine'
import { Form, type More } from './form'
import { recall } from './kept'
import { backToPlace, watchPlace } from './place'
import { dress, run } from './run'

/** open makes every calculator of the page work, as its script tag says. */
export function open(more?: More): void {
  const tag = document.currentScript
  if (!tag) return
  const { engine = '', carried = '', words: sayings = '', wordsCarried = '', table = '', tableCarried = '', bench = '', benchStyle = '' } = tag.dataset
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

  watchPlace()
  restore(forms)
  tools(forms, bench, benchStyle)

  let loading: Promise<void> | undefined
  const begin = (): Promise<void> => (loading ??= load(source).then((work: Work) => forms.forEach((f) => f.start(work)), fail).then(backToPlace))
  const soon = (): unknown => 'requestIdleCallback' in window ? requestIdleCallback(begin, { timeout: 2000 }) : setTimeout(begin, 200)
  // The page is drawn first; a finger in a box does not wait for that.
  elements.forEach((element) => element.addEventListener('focusin', begin, { once: true }))
  if (document.readyState === 'complete') soon()
  else window.addEventListener('load', soon, { once: true })
  window.addEventListener('pageshow', (event) => event.persisted && forms.forEach((f) => f.update()))
}

/** restore fills the form that the page's address names: the one at its fragment, else the first of the name. */
function restore(forms: readonly Form[]): void {
  const request = new URLSearchParams(location.search)
  const named = forms.filter((f) => f.name === request.get('calculator'))
  const meant = named.find((f) => f.part === location.hash.slice(1)) ?? named[0]
  meant?.restore(request, (history.state as { typed?: boolean } | null)?.typed === true)
}

/**
 * tools offers what few readers want: its script and its styles come once
 * somebody types, since a bench may be out of reach of the network later, or
 * when one of the tools was in use before a reload.
 */
function tools(forms: readonly Form[], script: string, style: string): void {
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
    form.element.addEventListener('input', () => void fetched().catch(() => undefined), { once: true })
    if (recall(form.part)) void use('again').then(backToPlace)
  }
}
