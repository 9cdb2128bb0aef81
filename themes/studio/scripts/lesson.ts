// What a lesson loads at once. Few readers want its calculators, or one step to a
// screen: the scripts of these come when they are wanted, and the latter also when
// somebody reads and the browser has nothing else to do, since a bench may be out of
// reach of the network later.
import * as words from '../words.yaml'
import { recall } from './kept'
import { cameAgain } from './place'
import { dress, run } from './run'
import { keepPlace, recallPlace } from './stepkept'
import { showPlace } from './stepticks'
import type { Want } from './stepview'

const tag = document.currentScript as HTMLScriptElement

/** desk loads the script of the calculators, as the script tag says. */
let desk = (): void => {
  const script = document.createElement('script')
  const { desk: address = '' } = tag.dataset
  for (const { name, value } of tag.attributes) if (name !== 'src' && name !== 'defer') script.setAttribute(name, value)
  script.src = address
  const again = desk
  desk = () => undefined
  script.onerror = () => {
    script.remove()
    desk = again
  }
  document.head.append(script)
}

/** folds closes the calculators, but for the one that the address or what is kept speaks of. */
function folds(): void {
  const all = [...document.querySelectorAll<HTMLDetailsElement>('[data-fold]')]
  const hash = (): HTMLElement | null => document.getElementById(decodeURIComponent(location.hash.slice(1)))
  const named = new URLSearchParams(location.search).get('calculator')
  const asked = all.filter((fold) => named && fold.querySelector(`[data-calculator="${CSS.escape(named)}"]`))
  const meant = asked.find((fold) => fold === hash()) ?? asked[0]
  let printing = false
  for (const fold of all) {
    fold.open = fold === meant || fold.contains(hash()) || recall(fold.id) !== undefined
    if (fold.open) desk()
    fold.addEventListener('toggle', () => fold.open && !printing && desk())
  }
  addEventListener('hashchange', () => {
    for (const fold of all) if (fold.contains(hash())) fold.open = true
  })
  // On paper an example tells more than the name of a calculator.
  let closed: HTMLDetailsElement[] = []
  addEventListener('beforeprint', () => {
    printing = true
    closed = all.filter((fold) => !fold.open)
    for (const fold of closed) fold.open = true
  })
  addEventListener('afterprint', () => {
    for (const fold of closed) fold.open = false
    printing = false
  })
}

/** steps offers to show one step to a screen, and shows what is kept. */
function steps(way: HTMLElement): void {
  const { stepView = '', stepStyle = '' } = tag.dataset
  let loading: Promise<unknown> | undefined
  const fetched = (): Promise<unknown> => {
    loading ??= Promise.all([dress(stepStyle), run(stepView)])
    loading.catch(() => (loading = undefined))
    return loading
  }
  const use = async (want: Want): Promise<void> => {
    try {
      await fetched()
      globalThis.atStep?.(want)
    } catch {
      const [, says] = way.children
      if (says && want !== 'again') says.textContent = words['step-view-failed'] ?? ''
    }
  }
  const place = recallPlace()
  showPlace(way, place, () => void use('clear'))
  way.querySelector('[data-go-on]')?.addEventListener('click', () => void use('open'))
  way.hidden = false
  if (place && (place.timers.length > 0 || place.open && cameAgain())) void use('again')
  else if (place?.open) keepPlace({ ...place, open: false }) // the reader came anew, and sees where to go on
  // Who scrolls or touches is reading, and may be at the bench next.
  const quietly = (): unknown => fetched().catch(() => undefined)
  const soon = (): unknown => 'requestIdleCallback' in window ? requestIdleCallback(quietly, { timeout: 4000 }) : setTimeout(quietly, 1000)
  for (const kind of ['scroll', 'pointerdown', 'keydown']) addEventListener(kind, soon, { once: true, passive: true })
}

const way = document.querySelector<HTMLElement>('[data-step-in]')
folds()
if (way) steps(way)
