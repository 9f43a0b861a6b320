import type { Schedule } from '../timing/schedule.ts'
import type { Way } from '../transfer/way.ts'
import type { Seconds } from '../units.ts'
import { chartColumns, chartTitle, chartUnits } from '../words/chartColumns.ts'
import type { ChartRow } from '../words/chartRows.ts'
import { csvText } from './csvText.ts'
import { figureRecord, jsonText, wayRecord } from './jsonText.ts'
import type { Form } from './readArguments.ts'
import { tableText } from './tableText.ts'

export type Chart = {
  readonly schedule: Schedule
  readonly way: Way
  readonly barsPerMinute: number
  /** The shortest time in which the dancer carries the weight across. */
  readonly shortest: Seconds
  /** Distance of the rows, beats. */
  readonly every: number
  readonly rows: readonly ChartRow[]
}

/** What kind of JSON this is, and the version of its keys. */
const JSON_KIND = 'chart 1'

/** A chart as text for a terminal, a spreadsheet or a program; ends with a line break. */
export function chartText(form: Form, { schedule, way, barsPerMinute, shortest, every, rows }: Chart): string {
  switch (form) {
    case 'csv':
      return csvText(chartColumns(rows), rows)
    case 'json':
      return jsonText({
        overfoot: JSON_KIND,
        units: chartUnits,
        figure: figureRecord(schedule),
        performance: wayRecord(way),
        ...{ barsPerMinute, shortest, every, rows },
      })
    case 'table':
      return `${chartTitle(schedule.figure, way)}\n\n${tableText(chartColumns(rows), rows)}`
  }
}
