// The desk: everything that a page with calculators runs.
import { awake } from './awake'
import { load, type Source, type Work } from './engine'
import { Form } from './form'

/** open makes every calculator of the page work, as its script tag says. */
function open(said: DOMStringMap): void {
  const word = (name: string): string => said[name] ?? ''
  const words = { still: word('still'), before: word('before'), beforeAlone: word('beforeAlone'), wait: word('wait'), copied: word('copied') }
  const elements = [...document.querySelectorAll<HTMLFormElement>('form[data-calculator]')]
  const fail = (): void => forms.forEach((form, n) => {
    form.stop()
    const failed = elements[n]?.parentElement?.querySelector<HTMLElement>('[data-failed]')
    if (failed) failed.textContent = word('failed')
  })
  const forms = elements.map((element) => new Form(element, words, fail))
  const source: Source = { engine: word('engine'), carried: word('carried'), settings: elements[0]?.dataset['settings'] ?? '' }

  restore(forms, elements)
  awake([...document.querySelectorAll<HTMLButtonElement>('[data-awake]')])

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
function restore(forms: readonly Form[], elements: readonly HTMLFormElement[]): void {
  const request = new URLSearchParams(location.search)
  const named = forms.filter((f) => f.name === request.get('calculator'))
  const at = elements.findIndex((e) => e.dataset['part'] === location.hash.slice(1))
  const meant = named.find((f) => f === forms[at]) ?? named[0]
  meant?.restore(request, (history.state as { typed?: boolean } | null)?.typed === true)
}

const script = document.currentScript
if (script) open(script.dataset)
