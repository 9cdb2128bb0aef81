// Whether the line to the network is thin. Browsers that do not say so are taken to have
// a good one.

/** What some browsers say of the line. */
interface Line {
  readonly saveData?: boolean // the reader wants little to be fetched
  readonly effectiveType?: string // how quick it is: 'slow-2g', '2g', '3g' or '4g'
}

/** thin reports that nothing large should come without being asked for. */
export function thin(line: Line | undefined = (navigator as { connection?: Line }).connection): boolean {
  return line?.saveData === true || (line?.effectiveType ?? '4g') !== '4g'
}

/** here reports whether a file is on this device already, so that it costs the line nothing. */
export async function here(address: string): Promise<boolean> {
  try {
    const response = await fetch(address, { cache: 'only-if-cached', mode: 'same-origin' })
    await response.body?.cancel()
    return response.ok
  } catch {
    return location.protocol === 'file:'
  }
}
