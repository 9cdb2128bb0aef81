// The keys of a page that is printed or given to somebody: print, and share. Where the
// browser shares nothing, the link is copied.
import { part } from './box'
import { copyLink } from './copy'

const keys = document.querySelector<HTMLElement>('[data-page-keys]')
if (keys) begin(keys)

function begin(keys: HTMLElement): void {
  const link = new URL(location.pathname, location.href).href // without what the reader looked for, or where he was
  const told = part<HTMLElement>(keys, '[data-told]')
  const byHand = part<HTMLElement>(keys, '[data-by-hand]')
  const share = part<HTMLElement>(keys, '[data-share]')
  part(keys, '[data-print]').addEventListener('click', () => print())
  share.hidden = location.protocol === 'file:' // nobody else has that file there
  share.addEventListener('click', () => void give())
  keys.hidden = false

  async function give(): Promise<void> {
    told.textContent = ''
    if ('share' in navigator) {
      try {
        return await navigator.share({ title: document.title, url: link })
      } catch (fault) {
        if (fault instanceof DOMException && fault.name === 'AbortError') return // the reader thought better of it
      }
    }
    await copyLink(link, byHand, (text) => { told.textContent = text ?? '' })
  }
}
