// What is shown with a step when it stands alone on the screen.

/** Kind is what one of a lesson's elements is, as far as steps care. */
export type Kind = 'part' | 'step' | 'caution' | 'tool' | 'words' | 'aside'

/** Group is what one step is shown with: the places of elements. */
export interface Group {
  readonly shown: number[] // whole, where they stand
  readonly held: number[] // cautions of earlier steps of the same part, of which the headline still stands
  readonly tools: number[] // calculators and weighing orders of the whole part, after the step; a caution of theirs with them
}

/**
 * groups makes one for each step. Whatever stands before a step, from the step
 * before it on, is shown with it: a caution guards what follows it. What comes
 * after the last step of a part is shown with that step. Tools, which are
 * calculators and weighing orders, are shown with all steps of their part, but for
 * those between two steps. Of a part without steps the next step takes over the
 * cautions, and the next part the tools. Asides are for reading, and are left out.
 */
export function groups(kinds: readonly Kind[]): Group[] {
  const all: Group[] = []
  let heading: number[] = []
  let waiting: number[] = []
  let held: number[] = []
  let tools: number[] = []
  let last: Group | undefined // of this part
  const of = (kind: Kind): number[] => waiting.filter((n) => kinds[n] === kind)
  const endPart = (): void => {
    // A caution before a tool may be meant for it, and goes where the tool goes.
    const behind = waiting.slice(0, 1 + waiting.lastIndexOf(of('tool').at(-1) ?? -1)).filter((n) => kinds[n] !== 'words')
    if (last) {
      tools.push(...behind)
      last.shown.push(...waiting.filter((n) => !behind.includes(n)))
    }
    waiting = last ? [] : [...of('caution'), ...of('tool')]
    held = []
    tools = []
    last = undefined
  }
  kinds.forEach((kind, n) => {
    if (kind === 'part') {
      endPart()
      heading = [n]
    } else if (kind === 'step') {
      if (!last) tools = of('tool')
      last = { shown: [...heading, ...waiting.filter((w) => !tools.includes(w)), n], held, tools }
      held = [...held, ...of('caution')]
      waiting = []
      all.push(last)
    } else if (kind !== 'aside') {
      waiting.push(n)
    }
  })
  endPart()
  return all
}
