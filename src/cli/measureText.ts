import type { Schedule } from '../timing/schedule.ts'
import type { Seconds } from '../units.ts'
import {
  measureColumns,
  measureLabels,
  measureTitle,
  measureUnits,
  momentColumns,
  momentOfWholeColumns,
  momentsOfWhole,
  smoothnessColumns,
  stretchColumns,
  stretchesOf,
} from '../words/measureColumns.ts'
import type { Measure } from '../words/measureOf.ts'
import { csvText } from './csvText.ts'
import { figureRecord, jsonText, wayRecord } from './jsonText.ts'
import type { Form } from './readArguments.ts'
import { tableText } from './tableText.ts'

export type Measures = {
  readonly schedule: Schedule
  readonly barsPerMinute: number
  /** The shortest time in which the dancer carries the weight across. */
  readonly shortest: Seconds
  /** Whether all were asked for: then also one alone is a list. */
  readonly all: boolean
  readonly measures: readonly Measure[]
}

/** What kind of JSON this is, and the version of its keys. */
const JSON_KIND = 'measure 1'

/** The sentence, what it is said of, and the numbers: parts with an empty line between them. */
function block(measure: Measure, { schedule, barsPerMinute }: Measures): string {
  const stretches = stretchesOf(measure)
  return [
    `${measure.says}\n${measureTitle(schedule.figure, measure.way, barsPerMinute)}\n`,
    tableText(momentColumns, measure.moments),
    stretches.length === 0 ? `${measureLabels.noStretches}\n` : tableText(stretchColumns, stretches),
    measure.smoothness === null ? `${measureLabels.noMovement}\n` : tableText(smoothnessColumns, [measure.smoothness]),
  ].join('\n')
}

function measureRecord({ way, says, moments, waits, rushes, smoothness }: Measure): object {
  return { ...wayRecord(way), says, moments, waits, rushes, smoothness }
}

/** Measures as text for a terminal, a spreadsheet or a program; ends with a line break, unless there is nothing. */
export function measureText(form: Form, asked: Measures): string {
  const { schedule, barsPerMinute, shortest, all, measures } = asked
  switch (form) {
    case 'csv':
      return all ? csvText(measureColumns, measures) : csvText(momentOfWholeColumns, measures.flatMap(momentsOfWhole))
    case 'json':
      return jsonText({
        overfoot: JSON_KIND,
        units: measureUnits,
        figure: figureRecord(schedule),
        ...{ barsPerMinute, shortest },
        performances: measures.map(measureRecord),
      })
    case 'table':
      return measures.map((measure) => block(measure, asked)).join('\n\n')
  }
}
