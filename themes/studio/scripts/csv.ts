// Rows of an answer as a file: comma-separated values as RFC 4180 has them,
// the headings with their units first.

/** csv writes records; a field that needs it stands in quotes. */
export function csv(records: readonly (readonly string[])[]): string {
  const field = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
  return records.map((record) => record.map(field).join(',') + '\r\n').join('')
}

/** plain makes a number that was set for reading one that a spreadsheet reads: no groups of digits, a minus from the keyboard. */
export function plain(text: string): string {
  return text.replace(/^\u2212/, '-').replace(/(\d)\u202f(?=\d)/g, '$1')
}

/** save hands the rows of a table to the browser to be kept under a name. Nothing leaves the phone. */
export function save(table: HTMLTableElement, name: string): void {
  const records = [...table.rows].map((row) =>
    [...row.cells].filter((cell) => !cell.hidden).map((cell) => ('words' in cell.dataset || cell.closest('thead') ? cell.textContent ?? '' : plain(cell.textContent ?? ''))),
  )
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([csv(records)], { type: 'text/csv;charset=utf-8' }))
  link.download = `${name}.csv`
  link.click()
  // The browser needs a moment to take the file over.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000)
}
