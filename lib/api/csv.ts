/** What a cell of a list may hold. Several values share a cell, parted by semicolons. */
export type Cell = string | number | boolean | null | readonly string[]

/** Where a spreadsheet would see a formula begin: at the start of a cell, or after what it may part cells by instead. */
const FORMULA = /(^|[;\t\r\n])([ ]*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/g

/**
 * One line of a table as RFC 4180 writes it. Text that a spreadsheet would take for a formula is led by an
 * apostrophe, as OWASP advises (CSV Injection), also where it would take a semicolon or a tab for the end of a cell, as
 * many do by their language; numbers stay numbers.
 */
export const csvLine = (cells: readonly Cell[]): string => `${cells.map(csvCell).join(',')}\r\n`

function csvCell(cell: Cell): string {
  if (cell === null) return ''
  if (typeof cell === 'number' || typeof cell === 'boolean') return String(cell)
  const text = typeof cell === 'string' ? cell : cell.join('; ')
  const safe = text.replace(FORMULA, "$1$2'").replace(/^(?=[\t\r\n])/, "'")
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
