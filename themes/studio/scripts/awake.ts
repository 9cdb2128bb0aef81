// The switch that keeps the screen on while hands are wet. Browsers offer it
// only to pages that came over https (or from the same machine); elsewhere the
// switch stays hidden.

/** awake makes every such switch of the page work as one. */
export function awake(switches: readonly HTMLButtonElement[]): void {
  if (!('wakeLock' in navigator)) return
  let wanted = false
  let lock: WakeLockSentinel | undefined

  const show = (): void => switches.forEach((s) => s.setAttribute('aria-pressed', String(wanted)))
  const hold = async (): Promise<void> => {
    try {
      lock = await navigator.wakeLock.request('screen')
      if (!wanted) await lock.release()
    } catch {
      // A browser short of power refuses: the switch goes back by itself.
      wanted = document.visibilityState === 'hidden' && wanted
    }
    show()
  }

  for (const button of switches) {
    button.hidden = false
    button.addEventListener('click', () => {
      wanted = !wanted
      show()
      if (wanted) void hold()
      else void lock?.release().catch(() => undefined)
    })
  }
  // A page that was out of sight has lost its hold.
  document.addEventListener('visibilitychange', () => {
    if (wanted && document.visibilityState === 'visible') void hold()
  })
}
