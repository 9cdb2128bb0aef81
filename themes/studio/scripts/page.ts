// What every page of a published handbook runs, one with calculators within the script
// of those: once the page and its calculators have come, for a thin line is theirs
// first, the script comes that keeps the handbook on this phone.
const phone = document.querySelector<HTMLElement>('[data-phone]')?.dataset['phone']
const quiet = (): void => {
  if (document.querySelector('[aria-busy=true]')) setTimeout(quiet, 1000)
  else document.head.append(Object.assign(document.createElement('script'), { src: phone }))
}
if (phone) addEventListener('load', quiet)
export {}
