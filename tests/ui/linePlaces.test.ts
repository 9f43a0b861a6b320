import { describe, expect, test } from 'vitest'
import { type StripLine, strip } from '../../src/scene/strip.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession } from '../../src/session/session.ts'
import { along, linePath, linePlaces, rightAt } from '../../src/ui/linePlaces.ts'
import { beat } from '../../src/units.ts'
import { walks } from '../tools/exampleFigure.ts'

const figure = walks('foxtrot', [2, 1, 1])
const drawn = strip(lessonOf(newSession(figure, beat(0)), figure))

test('along(strip, beat): per cent of the axis', () => {
  expect([-0.5, 3.5, 7.5].map((t) => along(drawn, t))).toEqual([0, 50, 100])
})
test('linePath(strip, line) begins low, over the left foot', () => {
  expect(linePath(drawn, drawn.lines[0] as (typeof drawn.lines)[number])).toMatch(/^M0\.00 100\.00L/)
})
test('rightAt(line, t) is straight between points', () => {
  const line = {
    points: [
      { t: 0, right: 0 },
      { t: 2, right: 1 },
    ],
  }
  expect([-1, 0, 0.5, 2, 9].map((t) => rightAt(line, t))).toEqual([0, 0, 0.25, 1, 1])
})
test('linePlaces(strip): a name for each line, none on another', () => {
  const places = linePlaces(drawn)
  expect(places.map(({ panel }) => panel).sort()).toEqual([0, 1, 2])
  expect(new Set(places.map(({ y }) => Math.round(y))).size).toBe(3)
})

/** From one foot to the other in [from, to], and there it stays. */
type Line = Pick<StripLine, 'panel' | 'points'>

const line = (panel: number, from: number, to: number, first: 0 | 1 = 0): Line => ({
  panel,
  points: [
    { t: -0.5, right: first },
    { t: from, right: first },
    { t: to, right: 1 - first },
    { t: 3.5, right: 1 - first },
  ],
})
const stripOf = (lines: readonly Line[]) => ({ from: -0.5, to: 3.5, lines })

describe('linePlaces(strip)', () => {
  test.each([0, 1] as const)(
    'lays every name on its own line, whichever foot is first (%i = the right share)',
    (first) => {
      const lines = [line(0, 0, 2, first), line(1, 0.5, 2.5, first), line(2, 0, 1, first)]
      const places = linePlaces(stripOf(lines))
      expect(places).toHaveLength(3)
      for (const { panel, x, y } of places) {
        expect((1 - rightAt(lines[panel]!, -0.5 + (x / 100) * 4)) * 100).toBeCloseTo(y, 9)
      }
    },
  )

  test('names the earliest line before it, the others after them', () => {
    const places = linePlaces(stripOf([line(0, 0, 2), line(1, 0.5, 2.5), line(2, 0, 1)]))
    expect(Object.fromEntries(places.map(({ panel, side }) => [panel, side]))).toEqual({
      2: 'before',
      0: 'after',
      1: 'after',
    })
  })

  test('keeps the names apart where two lines are the same', () => {
    const [a, b] = linePlaces(stripOf([line(0, 0, 2), line(1, 0, 2)]))
    expect([a!.side, b!.side]).toEqual(['before', 'after'])
    const [, c, d] = linePlaces(stripOf([line(0, 0, 2), line(1, 0, 2), line(2, 0, 1)]))
    expect([c!.side, d!.side]).toEqual(['after', 'after'])
    expect(Math.abs(c!.y - d!.y)).toBeGreaterThan(20)
  })

  test('keeps the names out of a change to part weight, where the lines lie close', () => {
    const parts = (panel: number, by: number): Line => ({
      panel,
      points: [...[0, 0, 0.5, 0, 1, 1].map((right, index) => ({ t: index === 0 ? -0.5 : index - 1 + by, right }))],
    })
    const places = linePlaces({ from: -0.5, to: 6, lines: [parts(0, 0), parts(1, 0.5), parts(2, -0.25)] })
    expect(places).toHaveLength(3)
    const ys = places.map(({ y }) => y).sort((a, b) => a - b)
    for (const [index, y] of ys.entries()) if (index > 0) expect(y - (ys[index - 1] as number)).toBeGreaterThan(4)
    // The change from the left foot to the right one begins at beat 2.
    for (const { x } of places) expect((x / 100) * 6.5 - 0.5).toBeGreaterThan(1.75)
  })

  test('has no name for a line that never changes feet', () => {
    const still: Line = { panel: 0, points: [0, 3.5].map((t) => ({ t, right: 0 })) }
    expect(linePlaces(stripOf([still]))).toEqual([])
  })
})
