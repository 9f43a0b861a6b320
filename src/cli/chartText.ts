import type { Schedule } from '../timing/schedule.ts'
import type { Way } from '../transfer/way.ts'
import { chartColumns, chartTitle, chartUnits } from '../words/chartColumns.ts'
import type { ChartRow } from '../words/chartRows.ts'
import { wayName } from '../words/wayName.ts'
import type { ChartForm } from './readArguments.ts'

export type Chart = {
  readonly schedule: Schedule
  readonly way: Way
  /** Distance of the rows, beats. */
  readonly every: number
  readonly rows: readonly ChartRow[]
}

/** What kind of JSON this is, and the version of its keys. */
const JSON_KIND = 'chart 1'

/** In CSV and JSON: a tenth of a millimetre. */
const DECIMALS = 4
const TABLE_DECIMALS = 3

/** Never −0. */
const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0

const yesOrNo = (value: boolean): string => (value ? 'yes' : 'no')

/** A spreadsheet takes a text that begins like this for a formula; an apostrophe before it keeps it a text. */
const harmless = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text)

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

function csvCell(cell: string | number | boolean): string {
  if (typeof cell === 'number') return String(rounded(cell, DECIMALS))
  return quoted(harmless(typeof cell === 'boolean' ? yesOrNo(cell) : cell))
}

/** By RFC 4180: heads, then a record a row, each with CR LF. */
function csvText(rows: readonly ChartRow[]): string {
  const columns = chartColumns(rows)
  const heads = columns.map(({ group, name }) => csvCell(`${group} ${name}`.trim()))
  const records = rows.map((row) => columns.map(({ cell }) => csvCell(cell(row))))
  return [heads, ...records].map((record) => `${record.join(',')}\r\n`).join('')
}

const GAP = '  '

/** Columns for the eye: groups over heads over rows, numbers to the right. */
function tableText(rows: readonly ChartRow[]): string {
  const columns = chartColumns(rows).map(({ group, name, whole, cell }) => {
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
  const lines = [over, ...[-1, ...rows.keys()].map((at) => columns.map(({ lines }) => lines[at + 1]).join(GAP))]
  return lines.map((line) => `${line.trimEnd()}\n`).join('')
}

const numbersRounded = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? rounded(value, DECIMALS) : value

/** What JSON lets stand in a text and a terminal would obey: written as JSON's own escapes. */
const escaped = (json: string): string =>
  json.replace(/[\x7f-\x9f\p{Cf}\p{Zl}\p{Zp}]/gu, (sign) =>
    sign.replace(/[\s\S]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`),
  )

function jsonText({ schedule: { figure, timing }, way, every, rows }: Chart): string {
  const { id, title, dance, role } = figure
  const chart = {
    overfoot: JSON_KIND,
    units: chartUnits,
    figure: { id, title, dance, role, timing: timing.text },
    performance: { ...way, name: wayName(way) },
    every,
    rows,
  }
  return `${escaped(JSON.stringify(chart, numbersRounded, 2))}\n`
}

/** A chart as text for a terminal, a spreadsheet or a program; ends with a line break. */
export function chartText(form: ChartForm, chart: Chart): string {
  switch (form) {
    case 'csv':
      return csvText(chart.rows)
    case 'json':
      return jsonText(chart)
    case 'table':
      return `${chartTitle(chart.schedule.figure, chart.way)}\n\n${tableText(chart.rows)}`
  }
}
