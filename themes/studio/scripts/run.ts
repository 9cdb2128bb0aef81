/** dress loads a style sheet. */
export function dress(address: string): Promise<unknown> {
  const link = document.createElement('link')
  link.rel = 'stylesheet'
  return new Promise((resolve, reject) => {
    link.onload = resolve
    link.onerror = reject
    link.href = address
    document.head.append(link)
  })
}

/** run loads a classic script and runs it; pages opened as files may do that, and no more. */
export function run(address: string): Promise<unknown> {
  const script = document.createElement('script')
  return new Promise((resolve, reject) => {
    script.onload = resolve
    script.onerror = reject
    script.src = address
    document.head.append(script)
  })
}
