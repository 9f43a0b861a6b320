import type { Column } from '../words/column.ts'
import { yesOrNo } from './csvText.ts'
import { rounded } from './rounded.ts'

const TABLE_DECIMALS = 3
const GAP = '  '

/** Columns for the eye: groups (where there are any) over heads over rows, numbers to the right. */
export function tableText<Row>(shown: readonly Column<Row>[], rows: readonly Row[]): string {
  const columns = shown.map(({ group, name, whole, cell }) => {
    const decimals = whole ? 0 : TABLE_DECIMALS
    const cells = rows.map(cell)
    const texts = cells.map((value) => {
      if (typeof value === 'number') return rounded(value, decimals).toFixed(decimals)
      return typeof value === 'boolean' ? yesOrNo(value) : value
    })
    const width = Math.max(name.length, ...texts.map((text) => text.length))
    const toRight = typeof cells[0] === 'number'
    return {
      group,
      lines: [name, ...texts].map((text) => (toRight ? text.padStart(width) : text.padEnd(width))),
      width,
    }
  })
  const groups: { name: string; width: number }[] = []
  for (const { group, width } of columns) {
    const last = groups.at(-1)
    if (last?.name === group) last.width += GAP.length + width
    else groups.push({ name: group, width })
  }
  const over = groups.map(({ name, width }) => name.padEnd(width)).join(GAP)
  const lines = [-1, ...rows.keys()].map((at) => columns.map(({ lines }) => lines[at + 1]).join(GAP))
  return [...(over.trim() === '' ? [] : [over]), ...lines].map((line) => `${line.trimEnd()}\n`).join('')
}
