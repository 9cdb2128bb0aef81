// The steps of a plan, in order: first all in short, then each whole. How a step
// looks stands in the page, blank; here its words are put in.

/** showSteps shows the rows of a plan as lists. */
export function showSteps(root: HTMLElement, answer: URLSearchParams): void {
  const plan = root.querySelector<HTMLElement>('[data-plan]')
  if (!plan) return
  const id = root.closest('[id]')?.id ?? ''
  const { home = '', you = '' } = plan.dataset
  for (const list of plan.querySelectorAll('[data-steps]')) {
    const blank = (list.nextElementSibling as HTMLTemplateElement).content
    const steps: Node[] = []
    for (let n = 1; answer.has(`row.${n}.what`); n++) {
      const step = document.importNode(blank, true)
      const said = say(step, (column) => answer.get(`row.${n}.${column}`) ?? '')
      for (const link of step.querySelectorAll<HTMLAnchorElement>('li > a')) link.href = `#${id}.step.${n}`
      for (const care of step.querySelectorAll('[data-care]')) care.closest('li')?.setAttribute('id', `${id}.step.${n}`) // no :has(): Chromium 103 and Firefox 113 do not know it
      for (const lesson of step.querySelectorAll<HTMLAnchorElement>('[data-lesson]')) {
        if (said('lesson')) lesson.href = home + said('lesson')
        else lesson.remove()
      }
      if (said('who') === you && !said('wear') && !said('place') && !said('caution')) step.querySelector('[data-care]')?.remove()
      steps.push(step)
    }
    list.replaceChildren(...steps)
  }
  showMixed(plan, answer)
  plan.hidden = !answer.has('row.1.what')
}

/** showMixed shows what the studio mixes itself of what a plan puts on. */
function showMixed(plan: HTMLElement, answer: URLSearchParams): void {
  const mixed = plan.querySelector<HTMLElement>('[data-mixed]')
  const list = mixed?.querySelector('ul')
  const blank = mixed?.querySelector('template')?.content
  if (!mixed || !list || !blank) return
  const items: Node[] = []
  for (let n = 1; answer.has(`mixed.${n}.of`); n++) {
    const item = document.importNode(blank, true)
    const says = answer.get(`mixed.${n}.says`)
    const [pages, proofs, tiles] = ['page', 'proof', 'tile'].map((of) => answer.getAll(`mixed.${n}.${of}`)) as [string[], string[], string[]]
    const recipes = answer.getAll(`mixed.${n}.name`).map((name, i) => {
      const recipe = document.createElement('span')
      const proof = proofs[i] ?? ''
      recipe.append(linked(plan, name, pages[i] ?? ''), ' ', tiles[i] ? linked(plan, proof, tiles[i]) : proof)
      return recipe
    })
    for (const place of item.querySelectorAll('[data-mixed-of]')) place.textContent = answer.get(`mixed.${n}.of`)
    for (const place of item.querySelectorAll('[data-mixed-by]')) place.replaceChildren(...recipes.flatMap((recipe) => [recipe, ' ']))
    for (const place of item.querySelectorAll('[data-mixing]')) {
      if (says) place.textContent = says
      else place.parentElement?.remove()
    }
    items.push(item)
  }
  list.replaceChildren(...items)
  mixed.hidden = items.length === 0
}

/** linked is a link from a plan to a page, whose address is from the home page. */
function linked(plan: HTMLElement, words: string, page: string): HTMLAnchorElement {
  const link = document.createElement('a')
  link.href = (plan.dataset['home'] ?? '') + page
  link.textContent = words
  return link
}

/** say puts the words of a step into their places, and takes away the lines that have none. */
function say(step: DocumentFragment, said: (column: string) => string): (column: string) => string {
  for (const place of step.querySelectorAll<HTMLElement>('[data-say]')) {
    const text = said(place.dataset['say'] ?? '')
    if (text) place.textContent = text
    else (place.closest('[data-line]') ?? place).remove()
  }
  return said
}
