import type { Figure } from '../figure/figure.ts'
import { plainText } from '../figure/plainText.ts'
import type { ChartFoot, ChartRow } from '../words/chartRows.ts'
import type { ChartForm } from './readArguments.ts'

/** Decimals of everything but texts; a tenth of a millimetre. */
const DECIMALS = 4
const TABLE_DECIMALS = 3

type Cell = string | number | boolean

/** Never −0. */
const rounded = (value: number, decimals = DECIMALS): number => Number(value.toFixed(decimals)) + 0

const foot = (side: 'left' | 'right', { x, y, heading, load, onFloor }: ChartFoot): [string, Cell][] => [
  [`${side} x m`, x],
  [`${side} y m`, y],
  [`${side} heading deg`, heading],
  [`${side} load`, load],
  [`${side} on floor`, onFloor],
]

/** A row as columns: head and value. */
const cellsOf = (row: ChartRow): readonly [string, Cell][] => [
  ['beat', row.beat],
  ['bar', row.bar],
  ['count', row.count],
  ['action', row.action],
  ['sign', row.sign],
  ['progress', row.progress],
  ...foot('left', row.left),
  ...foot('right', row.right),
  ['weight x m', row.weight.x],
  ['weight y m', row.weight.y],
  ...(row.bodyTurn === undefined ? [] : [['body turn deg', row.bodyTurn] as [string, Cell]]),
  ...(row.rise === undefined ? [] : [['rise', row.rise] as [string, Cell]]),
  ...(row.sway === undefined ? [] : [['sway', row.sway] as [string, Cell]]),
  ['stage', row.stage],
  ['says', row.says],
]

const cellText = (cell: Cell, decimals: number): string =>
  typeof cell === 'number' ? String(rounded(cell, decimals)) : typeof cell === 'boolean' ? (cell ? 'yes' : 'no') : cell

/** RFC 4180. No text of the user's is in it, so none can pass for a spreadsheet's formula. */
function csv(rows: readonly ChartRow[]): string {
  const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
  const heads = rows.slice(0, 1).map((row) => cellsOf(row).map(([head]) => head))
  const lines = [...heads, ...rows.map((row) => cellsOf(row).map(([, cell]) => cellText(cell, DECIMALS)))]
  return lines.map((line) => `${line.map(quoted).join(',')}\r\n`).join('')
}

function table(rows: readonly ChartRow[]): string {
  const [first] = rows
  if (first === undefined) return ''
  const heads = cellsOf(first).map(([head]) => head)
  const lines = rows.map((row) =>
    cellsOf(row).map(([, cell]) =>
      typeof cell === 'number' && !Number.isInteger(cell)
        ? rounded(cell, TABLE_DECIMALS).toFixed(TABLE_DECIMALS)
        : cellText(cell, TABLE_DECIMALS),
    ),
  )
  const widths = heads.map((head, column) => Math.max(head.length, ...lines.map((line) => (line[column] ?? '').length)))
  const isText = cellsOf(first).map(([, cell]) => typeof cell === 'string')
  const aligned = (line: readonly string[]): string =>
    line
      .map((text, column) => (isText[column] ? text.padEnd(widths[column] ?? 0) : text.padStart(widths[column] ?? 0)))
      .join('  ')
      .trimEnd()
  return [heads, ...lines].map((line) => `${aligned(line)}\n`).join('')
}

const numbersRounded = (value: unknown): unknown => {
  if (typeof value === 'number') return rounded(value)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, numbersRounded(inner)]))
}

/** What the numbers of the rows mean. */
const UNITS = {
  ...{
    beat: 'beats from the first action’s count',
    progress: 'actions done',
    x: 'm',
    y: 'm',
    heading: 'degrees, right +',
  },
  ...{ load: 'share of the weight', bodyTurn: 'degrees since the start, right +', rise: '0 down to 1 up' },
  sway: '-1 left to 1 right',
} as const

/**
 * A chart as text for a file or a terminal; ends with a line break.
 * @param performance its name: "In time"
 */
export function chartText(form: ChartForm, figure: Figure, performance: string, rows: readonly ChartRow[]): string {
  if (form === 'csv') return csv(rows)
  if (form === 'table') return `${plainText(figure.title)}: ${performance}\n${table(rows)}`
  const chart = {
    chart: 1,
    figure: figure.id,
    title: figure.title,
    dance: figure.dance,
    role: figure.role,
    performance,
  }
  return `${JSON.stringify({ ...chart, units: UNITS, rows: rows.map(numbersRounded) }, null, 2)}\n`
}
