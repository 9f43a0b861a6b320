import { describe, expect, test } from 'vitest'
import { strip } from '../../src/scene/strip.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession, withLoop } from '../../src/session/session.ts'
import { beat } from '../../src/units.ts'
import { exampleFigure, walks } from '../tools/exampleFigure.ts'

const stripOf = (figure: ReturnType<typeof walks>) =>
  strip(lessonOf(withLoop(newSession(figure, beat(0)), false), figure))

describe('strip(lesson): S Q Q with the right foot first', () => {
  const { grid, lines, from, to } = stripOf(walks('foxtrot', [2, 1, 1]))
  const at = (line: number, t: number) => lines[line]?.points.find((point) => Math.abs(point.t - t) < 1e-9)?.right

  test('from the first leave to the latest full, by half beats, the bar’s first count marked', () => {
    expect([from, to]).toEqual([-0.5, 4])
    expect(grid.map(({ beat: t }) => t)).toEqual([-0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4])
    expect(grid.filter(({ barStart }) => barStart).map(({ beat: t }) => t)).toEqual([0, 4])
    expect(grid.filter(({ phraseStart }) => phraseStart).map(({ beat: t }) => t)).toEqual([0])
  })
  test('the weight swings from the left foot to the right and back', () => {
    expect([-0.5, 0.5, 1.5, 2, 2.5, 3.5].map((t) => at(0, t))).toEqual([0, 0.5, 1, 0.5, 0, 1])
  })
  test('late by ½ is the same line half a beat later', () => {
    expect([0, 1, 2, 2.5, 3, 4].map((t) => at(1, t))).toEqual([0, 0.5, 1, 0.5, 0, 1])
  })
  test('early waits twice: after the S and after the first Q', () => {
    expect(lines.map(({ waits }) => waits)).toEqual([
      [],
      [],
      [
        { from: 0.5, to: 1.5 },
        { from: 2, to: 2.5 },
      ],
    ])
  })
})

test('strip(lesson): a tap leaves the line where it is', () => {
  const { lines } = stripOf(exampleFigure('exercise', [1, 1, 1], ['forward', 'tap', 'forward']))
  const over = lines[0]?.points.filter(({ t }) => t >= 0.5 && t <= 1.5).map(({ right }) => right) ?? []
  expect(new Set(over)).toEqual(new Set([1]))
})

test('strip(lesson): while a foot taps the weight stands in the plan too; only what is longer is a wait', () => {
  const { lines } = stripOf(exampleFigure('exercise', [1, 1, 1], ['forward', 'tap', 'forward']))
  expect(lines.map(({ waits }) => waits)).toEqual([[], [], [{ from: 0, to: 0.5 }]])
})
