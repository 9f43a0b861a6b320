import { curveMonotoneX, line } from 'd3-shape'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { schedule } from '../../src/timing/schedule.ts'
import { curveThrough, type Knot } from '../../src/transfer/curve.ts'
import { perform } from '../../src/transfer/perform.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'

/** Slopes of d3-shape's curveMonotoneX (Steffen 1990) at each point, read off the Béziers that it draws. */
function slopesOfD3(knots: readonly Knot[]): number[] {
  const starts: number[] = []
  let lastEnd = 0
  let [x, y] = [0, 0]
  const pen = {
    moveTo: (a: number, b: number) => ([x, y] = [a, b]),
    lineTo: (a: number, b: number) => ([x, y] = [a, b]),
    closePath: () => {},
    bezierCurveTo(a: number, b: number, c: number, d: number, x1: number, y1: number) {
      starts.push((b - y) / (a - x))
      lastEnd = (y1 - d) / (x1 - c)
      ;[x, y] = [x1, y1]
    },
  }
  line<Knot>()
    .x(({ t }) => t)
    .y(({ p }) => p)
    .curve(curveMonotoneX)
    .context(pen as unknown as CanvasRenderingContext2D)([...knots])
  return [...starts, lastEnd]
}

describe('curveThrough(knots): interior slopes are Steffen’s (1990), as d3-shape draws them', () => {
  test('RPN 14 data (Fritsch & Carlson 1980; as printed in the GSL example): slopes by d3-shape', () => {
    const x = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20]
    const y = [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994]
    const knots = x.map((t, k) => ({ t, p: y[k] as number }))
    const curve = curveThrough(knots)
    const expected = [0.000552858, 0.405865157882, 0.424973886624, 0.597566923077, 0.054896, 0.000855333333, 0.00003]
    for (const [k, slope] of expected.entries()) expect(curve.speed(x[k + 1] as number)).toBeCloseTo(slope, 9)
    for (const [t, value] of [
      [8.15, 0.022520449864],
      [9, 0.341115688096],
      [13, 0.999342111111],
    ] as const) {
      expect(curve.at(t)).toBeCloseTo(value, 9)
    }
  })
  test('every generated ideal', () => {
    fc.assert(
      fc.property(generatedFigure(), (figure) => {
        const { curve } = perform(schedule(figure), { kind: 'in time' })
        const slopes = slopesOfD3(curve.knots)
        for (const [k, { t }] of curve.knots.entries()) {
          if (k === 0 || k === curve.knots.length - 1) continue
          expect(curve.speed(t)).toBeCloseTo(slopes[k] as number, 9)
        }
      }),
      THOUSAND,
    )
  })
})

describe('curveThrough(knots): the ends', () => {
  test('slope 0 at both: own arithmetic: p = 3x² − 2x³ between two knots', () => {
    const curve = curveThrough([
      { t: 1, p: 0 },
      { t: 3, p: 1 },
    ])
    expect(curve.speed(1)).toBe(0)
    expect(curve.speed(3)).toBe(0)
    expect(curve.at(1.5)).toBeCloseTo(3 / 16 - 2 / 64, 15)
    expect(curve.speed(2)).toBeCloseTo(0.75, 15)
  })
  test('first half beat of S Q Q: from rest to ½ a beat, p(−¼) = 3/32', () => {
    // Slopes 0 and ½ over a half beat that rises ¼: x²(3·¼ − ¼) + x³(¼ − 2·¼) at x = ½ → ⅛ − 1/32.
    expect(perform(schedule(walks('foxtrot', [2, 1, 1])), { kind: 'in time' }).curve.at(-0.25)).toBeCloseTo(3 / 32, 15)
  })
  test('held before and after', () => {
    const curve = curveThrough([
      { t: 0, p: 0 },
      { t: 1, p: 1 },
    ])
    expect([curve.at(-5), curve.at(7), curve.speed(-1), curve.speed(2)]).toEqual([0, 1, 0, 0])
  })
})

describe('curveThrough(knots).arrives, departs', () => {
  const curve = curveThrough([
    { t: 0, p: 0 },
    { t: 1, p: 1 },
    { t: 2, p: 1 },
    { t: 3, p: 2 },
  ])
  test('differ where the curve waits', () => {
    expect([curve.arrives(1), curve.departs(1)]).toEqual([1, 2])
  })
  test('outside: before everything and never', () => {
    expect([curve.arrives(0), curve.arrives(2.5), curve.departs(2), curve.departs(-1)]).toEqual([
      -Infinity,
      Infinity,
      Infinity,
      -Infinity,
    ])
  })
  test('inside a rise they meet, and undo at(t)', () => {
    for (let t = 2.05; t < 2.97; t += 0.05) {
      expect(curve.arrives(curve.at(t))).toBeCloseTo(t, 9)
      expect(curve.departs(curve.at(t))).toBeCloseTo(t, 9)
    }
  })
})

test('curveThrough(knots) refuses fewer than two knots, equal times and a fall', () => {
  expect(() => curveThrough([{ t: 0, p: 0 }])).toThrow(RangeError)
  expect(() =>
    curveThrough([
      { t: 0, p: 0 },
      { t: 0, p: 1 },
    ]),
  ).toThrow(RangeError)
  expect(() =>
    curveThrough([
      { t: 0, p: 1 },
      { t: 1, p: 0 },
    ]),
  ).toThrow(RangeError)
})

describe('the ideal’s speed', () => {
  test('split on the count, all weighted, ½ to 2 beats: at least half its half beat’s mean, above 0 in the end half beats', () => {
    const SPLIT = ['waltz', 'foxtrot', 'quickstep', 'tango', 'viennese waltz'] as const
    const values = fc.array(fc.constantFrom(0.5, 1, 1.5, 2), { minLength: 1, maxLength: 10 })
    fc.assert(
      fc.property(
        fc.constantFrom(...SPLIT),
        values,
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        (dance, beats, where) => {
          const { curve } = perform(schedule(walks(dance, beats)), { kind: 'in time' })
          const t = curve.from + where * (curve.to - curve.from)
          const start = curve.from + Math.floor((t - curve.from) * 2) / 2
          const mean = (curve.at(start + 0.5) - curve.at(start)) / 0.5
          const atAnEnd = start === curve.from || start + 0.5 >= curve.to
          if (atAnEnd) expect(curve.speed(t)).toBeGreaterThan(0)
          else expect(curve.speed(t)).toBeGreaterThanOrEqual(0.5 * mean - 1e-12)
        },
      ),
      THOUSAND,
    )
  })
})
