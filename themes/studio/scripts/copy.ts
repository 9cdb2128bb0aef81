// A filled-in form as a link for somebody else.
import * as words from '../words.yaml'
import { part } from './box'
import type { Form } from './form'

/** copy copies the link, or shows it where the browser does not let a page copy. */
export async function copy(form: Form): Promise<void> {
  const link = form.link
  const byHand = part<HTMLElement>(form.section, '[data-by-hand]')
  const gone = (): void => {
    byHand.hidden = true
    form.tell('')
  }
  form.element.addEventListener('input', gone, { once: true })
  try {
    await navigator.clipboard.writeText(link)
    gone()
    form.tell(words['calculator-copied'])
  } catch {
    const shown = part<HTMLInputElement>(byHand, 'input')
    byHand.hidden = false
    shown.value = link
    shown.select()
  }
}
