import type { Column } from '../words/column.ts'
import { DECIMALS, rounded } from './rounded.ts'

/** A spreadsheet takes a text that begins like this for a formula; an apostrophe before it keeps it a text. */
const harmless = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text)

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

function csvCell(cell: string | number | boolean): string {
  if (typeof cell === 'number') return String(rounded(cell, DECIMALS))
  return quoted(harmless(typeof cell === 'boolean' ? yesOrNo(cell) : cell))
}

export const yesOrNo = (value: boolean): string => (value ? 'yes' : 'no')

/** By RFC 4180: heads, then a record a row, each with CR LF. */
export function csvText<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const heads = columns.map(({ group, name }) => csvCell(`${group} ${name}`.trim()))
  const records = rows.map((row) => columns.map(({ cell }) => csvCell(cell(row))))
  return [heads, ...records].map((record) => `${record.join(',')}\r\n`).join('')
}
