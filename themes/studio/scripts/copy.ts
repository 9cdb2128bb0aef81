// A link for somebody else: that of a filled-in form, or of a page.
import * as words from '../words.yaml'
import { part } from './box'
import type { Form } from './form'

/** copy copies the link of a form. */
export async function copy(form: Form): Promise<void> {
  const byHand = part<HTMLElement>(form.section, '[data-by-hand]')
  const gone = (): void => {
    byHand.hidden = true
    form.tell('')
  }
  form.element.addEventListener('input', gone, { once: true })
  await copyLink(form.link, byHand, (text) => form.tell(text))
}

/** copyLink copies a link and tells so, or shows it in a box where the browser does not let a page copy. */
export async function copyLink(link: string, byHand: HTMLElement, tell: (text: string | undefined) => void): Promise<void> {
  try {
    await navigator.clipboard.writeText(link)
    byHand.hidden = true
    tell(words['calculator-copied'])
  } catch {
    const shown = part<HTMLInputElement>(byHand, 'input')
    byHand.hidden = false
    shown.value = link
    shown.select()
  }
}
