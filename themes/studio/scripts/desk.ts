// The desk: everything that a page with calculators runs.
import * as words from '../words.yaml'
import { awake } from './awake'
import type { Tool } from './bench'
import { load, type Work } from './engine'
import { Form, type More } from './form'
import { recall } from './kept'
import { dress, run } from './run'

/** open makes every calculator of the page work, as its script tag says. */
export function open(more?: More): void {
  const said = document.currentScript?.dataset
  if (!said) return
  const word = (name: string): string => said[name] ?? ''
  const elements = [...document.querySelectorAll<HTMLFormElement>('form[data-calculator]')]
  const fail = (): void => forms.forEach((form) => {
    form.stop()
    const failed = form.section.querySelector<HTMLElement>('[data-failed]')
    if (failed) failed.textContent = words['calculator-failed'] ?? ''
  })
  const forms = elements.map((element) => new Form(element, fail, more))
  const source = {
    engine: word('engine'), carried: word('carried'), settings: elements[0]?.dataset['settings'] ?? '',
    table: word('table'), tableCarried: word('tableCarried'),
  }

  restore(forms)
  awake([...document.querySelectorAll<HTMLButtonElement>('[data-awake]')])
  tools(forms, word('bench'), word('benchStyle'))

  let loading: Promise<void> | undefined
  const begin = (): Promise<void> => (loading ??= load(source).then((work: Work) => forms.forEach((f) => f.start(work)), fail))
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

/** tools offers what few readers want: its script and its styles come when it is wanted, or was before a reload. */
function tools(forms: readonly Form[], script: string, style: string): void {
  let loading: Promise<unknown> | undefined
  for (const form of forms) {
    const use = async (tool: Tool): Promise<void> => {
      try {
        await (loading ??= Promise.all([dress(style), run(script)]))
        globalThis.atBench?.(form, tool)
      } catch {
        loading = undefined
        form.tell(words['calculator-bench-failed'])
      }
    }
    for (const button of form.element.querySelectorAll<HTMLElement>('[data-tool]')) {
      button.addEventListener('click', () => void use(button.dataset['tool'] as Tool))
    }
    if (recall(form.part)) void use('again')
  }
}
