import { readFileSync } from 'node:fs'
import Papa from 'papaparse'
import { describe, expect, test } from 'vitest'
import { type Chart, chartText } from '../../src/cli/chartText.ts'
import { dances } from '../../src/dance/dances.ts'
import type { Figure } from '../../src/figure/figure.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { perform } from '../../src/transfer/perform.ts'
import type { Way } from '../../src/transfer/way.ts'
import { beat, beatValue, seconds, share } from '../../src/units.ts'
import { type ChartRow, chartRows } from '../../src/words/chartRows.ts'
import { exampleFigure, walks } from '../tools/exampleFigure.ts'

function chartOf(figure: Figure, way: Way, every = 0.5): Chart {
  const scheduled = schedule(figure)
  const [ideal, performance] = [perform(scheduled, { kind: 'in time' }), perform(scheduled, way)]
  const comparison = { dance: dances[figure.dance], schedule: scheduled, ideal, panels: [{ way, performance }] }
  return {
    ...{ schedule: scheduled, way, barsPerMinute: 29, shortest: seconds(0.42) },
    ...{ every, rows: chartRows(comparison, 0, every) },
  }
}
const inTime: Way = { kind: 'in time' }
const sqq = walks('foxtrot', [2, 1, 1], { title: 'Three walks' })
const tracked = exampleFigure('waltz', [1, 1, 1], ['forward', 'side', 'close'], {
  tracks: {
    bodyTurn: [],
    rise: [
      { at: beatValue(1, 2), value: 0 },
      { at: beatValue(2), value: 1 },
    ],
    sway: [],
  },
})

/** By another reader than our own. */
function readBack(csv: string): Record<string, string>[] {
  const { data, errors } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true })
  expect(errors).toEqual([])
  return data
}

describe('chartText(csv)', () => {
  test('is read back by another reader, and its lines end with CR LF', () => {
    const text = chartText('csv', chartOf(sqq, { kind: 'late', by: beat(0.25) }, 0.25))
    const data = readBack(text)
    // S Q Q from −½ to 3½, a quarter late: 17 rows of a quarter beat.
    expect(data.map((row) => Number(row.beat))).toEqual(Array.from({ length: 17 }, (_, k) => -0.25 + k / 4))
    expect(text.split('\r\n')).toHaveLength(data.length + 2)
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    // On the count of a quick one in time is half way; late by ¼ a quarter beat after it.
    expect(data.find((row) => row.beat === '2.25')).toMatchObject({ progress: '1.5', action: '2', count: '·' })
    for (const row of data) expect(Number(row['left foot load']) + Number(row['right foot load'])).toBeCloseTo(1, 3)
  })

  test('quotes commas and quotes', () => {
    const chart = chartOf(sqq, inTime)
    const says = 'RF, "half",\r\nforward'
    const rows = chart.rows.map((row): ChartRow => ({ ...row, says }))
    expect(readBack(chartText('csv', { ...chart, rows })).map((row) => row.says)).toEqual(rows.map(() => says))
  })

  test.each(['=1+1', '+1', '-1', '@x', '\t=1', '\r=1'])('%j is kept from being a formula', (says) => {
    const chart = chartOf(sqq, inTime)
    const [first] = chart.rows
    const [read] = readBack(chartText('csv', { ...chart, rows: [{ ...(first as ChartRow), says }] }))
    expect(read?.says).toBe(`'${says}`)
    // A number is none, whatever it begins with.
    expect(read?.beat).toBe('-0.5')
  })
})

describe('chartText(json)', () => {
  test('names its units, figure and performance', () => {
    const chart = JSON.parse(chartText('json', chartOf(sqq, { kind: 'early', part: share(0.5) })))
    expect(chart).toMatchObject({
      overfoot: 'chart 1',
      units: { x: expect.stringContaining('metres'), heading: expect.stringContaining('degrees') },
      figure: { id: 'example', title: 'Three walks', dance: 'foxtrot', role: 'leader', timing: '2 1 1' },
      performance: { kind: 'early', part: 0.5, name: expect.stringMatching(/^Early/) },
      ...{ barsPerMinute: 29, shortest: 0.42, every: 0.5 },
    })
    // Too soon onto a slow: across in half of its time, on the & after its count.
    expect(chart.rows.find((row: ChartRow) => row.beat === 0.5)).toMatchObject({
      ...{ bar: 1, count: '&', action: 1, progress: 1, says: 'RF forward' },
      right: { load: 1, onFloor: true },
    })
  })

  test('numbers chosen steps from 1', () => {
    const chart = JSON.parse(chartText('json', chartOf(sqq, { kind: 'stops', on: [0, 2] })))
    expect(chart.performance).toEqual({ kind: 'stops', steps: [1, 3], name: 'Stops in the middle: steps 1 and 3' })
  })

  test('explains every number of a row', () => {
    const { units, rows } = JSON.parse(chartText('json', chartOf(tracked, inTime)))
    const numbers = new Set<string>()
    JSON.stringify(rows, (key, value) => {
      if (typeof value === 'number') numbers.add(key)
      return value
    })
    expect(numbers).toContain('rise')
    expect([...numbers].filter((key) => key !== 'bar' && key !== 'action' && !Object.hasOwn(units, key))).toEqual([])
  })

  test('has no key that the README does not explain', () => {
    const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
    const keys = new Set<string>()
    for (const way of [
      { kind: 'late', by: beat(0.5) },
      { kind: 'early', part: share(0.5), on: [1] },
    ] as const) {
      const { units, ...chart } = JSON.parse(chartText('json', chartOf(tracked, way)))
      JSON.stringify({ ...chart, units: null }, (key, value) => {
        if (!/^\d*$/.test(key)) keys.add(key)
        return value
      })
    }
    expect([...keys].filter((key) => !readme.includes(`\`${key}\``))).toEqual([])
  })

  test('a title cannot turn or move what a terminal shows, and is read back as it is', () => {
    const title = 'a\u{202e}b\u{9b}2J\u{1b}\u{e0041}\u{2028}c'
    const text = chartText('json', chartOf(walks('waltz', [1], { title }), inTime))
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u)
    expect(JSON.parse(text).figure.title).toBe(title)
  })
})

describe('chartText(table)', () => {
  test('stands in columns that are all equally wide', () => {
    const [title, , groups, ...lines] = chartText('table', chartOf(sqq, inTime)).trimEnd().split('\n')
    expect(title).toBe('Three walks: In time')
    const at = lines[0]?.indexOf('stage') ?? -1
    for (const line of lines.slice(1)) expect(line.slice(at - 2, at + 1)).toMatch(/^ {2}\S/)
    expect(groups?.indexOf('left foot')).toBe((lines[0]?.indexOf('progress') ?? 0) + 'progress'.length + 2)
  })

  test('shows the tracks that a figure has, and no others', () => {
    const text = chartText('table', chartOf(tracked, inTime))
    expect(text).toMatch(/ rise {2,}stage/)
    expect(text).not.toMatch(/sway|body turn/)
  })
})

test.each(['table', 'csv', 'json'] as const)(
  'chartText(%s) has finite numbers, never −0, and a last line break',
  (form) => {
    for (const figure of [sqq, tracked, walks('tango', [1, 1])]) {
      const text = chartText(form, chartOf(figure, { kind: 'late', by: beat(1 / 3) }, 0.125))
      expect(text).not.toMatch(/NaN|Infinity|null|undefined|(^|[\s,:])-0(\.0*)?($|[\s,])/m)
      expect(text.endsWith('\n')).toBe(true)
    }
  },
)
