// Entering a box selects what is in it, so that a digit typed takes its place
// and is never joined to it: by the key Tab, by the keyboard's "next", and by
// a finger, whose tap puts a caret there after the box has the focus.

/** selectOnEntry does so for every box inside an element. A second tap into a box puts the caret where the finger is. */
export function selectOnEntry(root: HTMLElement): void {
  let pressed: EventTarget | null = null // what a finger is about to enter
  let left: EventTarget | null = null // where the reader was when the whole window lost the focus
  root.addEventListener('pointerdown', (event) => {
    pressed = event.target === document.activeElement ? null : event.target
  })
  root.addEventListener('focusout', (event) => {
    left = document.activeElement === event.target ? event.target : null
  })
  root.addEventListener('focusin', (event) => {
    if (event.target !== left && isTyped(event.target)) event.target.select()
    left = null
  })
  root.addEventListener('click', (event) => {
    const box = event.target
    if (box === pressed && isTyped(box) && box.selectionStart === box.selectionEnd) box.select()
    pressed = null
  })
}

function isTyped(target: EventTarget | null): target is HTMLInputElement {
  return target instanceof HTMLInputElement && target.type === 'text' && !target.readOnly
}
