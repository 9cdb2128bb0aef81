// What every page of a published handbook runs, one with calculators within the script
// of those: once the page and its calculators have come (a thin line is theirs first,
// also while they wait to be wanted), the script comes that keeps the handbook on this phone.
const phone = document.querySelector<HTMLElement>('[data-phone]')?.dataset['phone']
const quiet = (): void => {
  if (document.querySelector('[aria-busy=true], [data-waits]')) setTimeout(quiet, 1000)
  else document.head.append(Object.assign(document.createElement('script'), { src: phone }))
}
if (phone) addEventListener('load', quiet)
export {}
