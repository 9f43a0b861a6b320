import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import type { Figure } from '../../src/figure/figure.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { perform } from '../../src/transfer/perform.ts'
import type { Way } from '../../src/transfer/way.ts'
import { beat, beatValue, radians } from '../../src/units.ts'
import { type ChartRow, chartRows } from '../../src/words/chartRows.ts'
import { exampleFigure, walks } from '../tools/exampleFigure.ts'

const IN_TIME: Way = { kind: 'in time' }

function rowsOf(figure: Figure, way: Way = IN_TIME, every = 0.5, timing = 0): readonly ChartRow[] {
  const scheduled = schedule(figure, timing)
  const [ideal, performance] = [perform(scheduled, IN_TIME), perform(scheduled, way)]
  const panels = [
    { way: IN_TIME, performance: ideal },
    { way, performance },
  ]
  return chartRows({ dance: dances[figure.dance], schedule: scheduled, ideal, panels }, 1, every)
}

function rowAt(rows: readonly ChartRow[], t: number): ChartRow {
  const row = rows.find((one) => one.beat === t)
  if (row === undefined) throw new Error(`no row at ${t}`)
  return row
}

describe('chartRows(comparison, panel, every)', () => {
  const sqq = walks('foxtrot', [2, 1, 1])

  test('goes from the first leave to the last full', () => {
    const rows = rowsOf(sqq)
    expect(rows.map((row) => row.beat)).toEqual([-0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5])
    expect([rows[0]?.progress, rows.at(-1)?.progress]).toEqual([0, 3])
  })

  test('goes to the grid points around them when they lie between two', () => {
    const beats = rowsOf(sqq, { kind: 'late', by: beat(0.3) }).map((row) => row.beat)
    expect([beats[0], beats.at(-1)]).toEqual([-0.5, 4])
  })

  test('is of the panel that is asked for', () => {
    expect(rowAt(rowsOf(sqq), 2)).toMatchObject({ progress: 1.5, stage: 'placed, half way between the feet' })
    expect(rowAt(rowsOf(sqq, { kind: 'late', by: beat(0.5) }), 2)).toMatchObject({ progress: 1, action: 1 })
  })

  test('numbers the action under way, or just done', () => {
    expect(rowsOf(sqq).map((row) => row.action)).toEqual([1, 1, 1, 1, 1, 2, 2, 3, 3])
    expect(rowsOf(sqq).map((row) => row.sign)).toEqual(['2', '2', '2', '2', '2', '1', '1', '1', '1'])
  })

  test('counts as musicians do, with bars', () => {
    const rows = rowsOf(sqq, IN_TIME, 0.25)
    expect(rows.slice(0, 7).map((row) => row.count)).toEqual(['&', 'a', '1', '·', '&', 'a', '2'])
    expect([rows[0]?.bar, rows[2]?.bar]).toEqual([0, 1])
    expect(rowAt(rowsOf(walks('waltz', [1, 1, 1, 1])), 3)).toMatchObject({ bar: 2, count: '1' })
  })

  test('has the feet in metres and degrees, turns to the right positive', () => {
    const turned = exampleFigure('waltz', [1, 1], ['forward', { direction: 'side', turn: radians(Math.PI / 2) }])
    const last = rowsOf(turned).at(-1)
    expect(last?.left.heading).toBeCloseTo(90, 9)
    expect(last?.left).toMatchObject({ load: 1, onFloor: true })
    expect(last?.weight.x).toBeCloseTo(last?.left.x ?? Number.NaN, 9)
    // A man's forward walk in the usual size is more than half a metre and less than a metre.
    expect(rowsOf(sqq).at(-1)?.right.y).toBeGreaterThan(3 * 0.5)
    expect(rowsOf(sqq).at(-1)?.right.y).toBeLessThan(3)
  })

  test('says each action with the foot that acts', () => {
    const says = rowsOf(exampleFigure('waltz', [1, 1, 1], ['forward', 'side', 'close'])).map((row) => row.says)
    expect([...new Set(says)]).toEqual(['RF forward', 'LF side', 'RF closes'])
  })

  test('has the tracks of the figure and no others; who is late rises late', () => {
    const tracks = {
      bodyTurn: [
        { at: beatValue(0), value: 0 },
        { at: beatValue(2), value: Math.PI / 2 },
      ],
      rise: [
        { at: beatValue(0), value: 0 },
        { at: beatValue(2), value: 1 },
      ],
      sway: [],
    }
    const figure = walks('waltz', [1, 1, 1], { tracks })
    const rows = rowsOf(figure)
    expect(rowAt(rows, 2).bodyTurn).toBeCloseTo(90, 9)
    expect(rowAt(rows, 2).rise).toBeCloseTo(1, 9)
    expect(rows[0]).not.toHaveProperty('sway')
    expect(rowAt(rowsOf(figure, { kind: 'late', by: beat(0.5) }), 2.5).rise).toBeCloseTo(1, 9)
    expect(rowAt(rowsOf(figure, { kind: 'late', by: beat(0.5) }), 2).rise).toBeLessThan(1)
  })

  test('reads the tracks by the first timing, whichever is danced', () => {
    const [first] = walks('waltz', [1, 1, 1]).timings
    const [slower] = walks('waltz', [2, 1, 1]).timings
    if (first === undefined || slower === undefined) throw new Error('no timing')
    const rise = [
      { at: beatValue(0), value: 0 },
      { at: beatValue(1), value: 1 },
    ]
    const figure = walks('waltz', [1, 1, 1], { timings: [first, slower], tracks: { bodyTurn: [], rise, sway: [] } })
    // Up with the second step's split: on 1 in the first timing, on 2 in the second.
    expect(rowAt(rowsOf(figure), 1).rise).toBeCloseTo(1, 9)
    const later = rowsOf(figure, IN_TIME, 0.5, 1)
    expect(rowAt(later, 2).rise).toBeCloseTo(1, 9)
    expect(rowAt(later, 1).rise).toBeLessThan(1)
  })

  test('is made of finite numbers alone, also for a single hold', () => {
    for (const figure of [sqq, exampleFigure('exercise', [1], ['hold'])]) {
      JSON.stringify(rowsOf(figure, IN_TIME, 0.125), (_key, value) => {
        if (typeof value === 'number') expect(value).toSatisfy(Number.isFinite)
        return value
      })
    }
  })
})
