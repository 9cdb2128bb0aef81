// The switch that keeps the screen on while hands are wet, and says in words
// whether it does. Browsers offer it only to pages that came over https (or
// from the same machine); elsewhere the switch stays hidden.
import * as words from '../words.yaml'

const switches = (): NodeListOf<HTMLElement> => document.querySelectorAll('[data-tool=awake]')
let wanted = false
let lock: WakeLockSentinel | undefined

function show(): void {
  for (const s of switches()) {
    s.setAttribute('aria-pressed', String(wanted))
    s.textContent = (wanted ? words['calculator-awake-on'] : words['calculator-awake']) ?? ''
  }
}

async function hold(): Promise<void> {
  try {
    lock = await navigator.wakeLock.request('screen')
    if (!wanted) await lock.release()
  } catch {
    // A browser short of power refuses: the switch goes back by itself.
    wanted = document.visibilityState === 'hidden' && wanted
  }
  show()
}

/** awake turns every such switch of the page on or off, or the other way about. */
export function awake(on = !wanted): void {
  if (!('wakeLock' in navigator) || on === wanted) return
  wanted = on
  show()
  if (on) void hold()
  else void lock?.release().catch(() => undefined)
}

// A page that was out of sight has lost its hold.
document.addEventListener('visibilitychange', () => {
  if (wanted && document.visibilityState === 'visible') void hold()
})
