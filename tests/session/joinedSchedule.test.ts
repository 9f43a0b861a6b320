import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { layOutFloor } from '../../src/pose/floor.ts'
import { pose } from '../../src/pose/pose.ts'
import { panelView } from '../../src/scene/panelView.ts'
import { strip } from '../../src/scene/strip.ts'
import { viewsOf } from '../../src/scene/view.ts'
import { canFollowItself } from '../../src/session/canFollowItself.ts'
import { type Lesson, lessonOf } from '../../src/session/lesson.ts'
import { newSession, withJoined, withLoop, withPanel, withPart, withSteps } from '../../src/session/session.ts'
import { musicPlace } from '../../src/timing/counts.ts'
import { wayOf } from '../../src/transfer/faults.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'

const joined = (figure: (typeof demos)[number]): Lesson =>
  lessonOf(withJoined(newSession(figure, beat(0)), true), figure)

/** Where feet and weight are in relation to one another, whatever the place and the way on the floor. */
function shapeAt(lesson: Lesson, panel: number, t: number): number[] {
  const performance = lesson.panels[panel]?.performance ?? lesson.ideal
  const { figure, actions } = lesson.schedule
  const floor = layOutFloor(
    figure,
    performance.carried,
    actions.map(() => null),
    bodyWithFeet(1),
  )
  const { left, right, weight: marker } = pose(floor, performance.curve.at(t))
  const feet = [left, right].flatMap((foot) => [
    Math.hypot(foot.x - marker.x, foot.y - marker.y),
    Math.cos(foot.heading - left.heading),
    foot.height,
    foot.load,
  ])
  return [...feet, Math.hypot(left.x - right.x, left.y - right.y)]
}

describe('a joined lesson', () => {
  test('S Q Q: two rounds of a bar, for feet are swapped; the picture ends as it begins', () => {
    const lesson = joined(walks('foxtrot', [2, 1, 1]))
    expect(lesson.joined).toBe(true)
    expect(lesson.round).toBe(8)
    const { from, to } = lesson.range
    expect(to - from).toBe(8)
    for (const panel of [0, 1, 2]) {
      const [begins, ends] = [shapeAt(lesson, panel, from), shapeAt(lesson, panel, to)]
      expect(ends).toEqual(begins.map((value) => expect.closeTo(value, 9)))
    }
  })

  test('the first step is entered moving: who is late is still on the step before', () => {
    const lesson = joined(walks('foxtrot', [2, 1, 1]))
    const [inTime, late] = [0, 1].map((panel) => lesson.panels[panel]?.performance.curve.at(lesson.range.from))
    expect(inTime).toBe(lesson.steps.first)
    expect(late).toBeLessThan(lesson.steps.first)
    expect(late).toBeGreaterThan(lesson.steps.first - 1)
  })

  test('the bars that are shown are counted from 1, and steps have the numbers they are written with', () => {
    const lesson = joined(walks('foxtrot', [2, 1, 1]))
    const { first, last } = lesson.steps
    const shown = lesson.schedule.actions.slice(first, last + 1)
    expect(shown.map(({ written }) => written)).toEqual([0, 1, 2, 0, 1, 2])
    expect(shown.map(({ called }) => musicPlace(lesson.schedule, called))).toMatchObject([
      { bar: 1, count: 1 },
      { bar: 1, count: 3 },
      { bar: 1, count: 4 },
      { bar: 2, count: 1 },
      { bar: 2, count: 3 },
      { bar: 2, count: 4 },
    ])
    const view = viewsOf(lesson, 900, 900)[0]
    if (view === undefined) throw new Error('no view')
    const numbers = panelView(lesson, 0, view, true).picture.labels.map(({ number }) => number)
    expect([...new Set(numbers)].sort()).toEqual(['1', '2', '3'])
  })

  test('all demos that can, and no other; what is shown lies inside the round, and the dancer faces up', () => {
    for (const figure of demos) {
      const lesson = joined(figure)
      expect(lesson.joined).toBe(canFollowItself(figure).can)
      if (!lesson.joined) continue
      expect(lesson.round % lesson.dance.beatsPerBar).toBe(0)
      const { from, to, lines } = strip(lesson)
      for (const { points, moments, waits } of lines) {
        for (const { t } of points) expect(t >= from && t <= to).toBe(true)
        for (const { danced } of moments) expect(danced >= from - 1e-6 && danced <= to + 1e-6).toBe(true)
        for (const wait of waits) expect(wait.from >= from - 1e-6 && wait.to <= to + 1e-6).toBe(true)
      }
      // What is said of it as a whole is said of it danced once.
      expect(lesson.once.schedule.actions.length).toBe(figure.actions.length)
    }
  })

  test('generated figures that can: in time, the picture ends as it begins, but for a foot’s breadth', () => {
    let joinedOnes = 0
    fc.assert(
      fc.property(generatedFigure({ turns: true }), (figure) => {
        const lesson = joined(figure)
        if (!lesson.joined) return
        joinedOnes++
        const { from, to } = lesson.range
        const begins = shapeAt(lesson, 0, from)
        shapeAt(lesson, 0, to).forEach((value, k) => {
          expect(Math.abs(value - (begins[k] as number))).toBeLessThan(0.15)
        })
      }),
      { ...THOUSAND, numRuns: 250 },
    )
    expect(joinedOnes).toBeGreaterThan(20)
  })

  test('a fault on chosen steps is danced in every round; a slip once', () => {
    const figure = walks('foxtrot', [2, 1, 1])
    const session = withJoined(newSession(figure, beat(0)), true)
    const late = lessonOf(withPanel(session, 1, wayOf('late', 0.5, [1])), figure)
    const behind = (lesson: Lesson): number[] =>
      lesson.schedule.actions
        .slice(lesson.steps.first, lesson.steps.last + 1)
        .map(({ index, moments }) => (lesson.panels[1]?.performance.times[index]?.leaves ?? 0) - moments.leaves)
    const [first, second] = [behind(late).slice(0, 3), behind(late).slice(3)]
    expect(first[1]).toBeCloseTo(0.5, 9)
    expect(second).toEqual(first.map((by) => expect.closeTo(by, 9)))
    const slip = behind(lessonOf(withPanel(session, 1, wayOf('slip', 0.5, [0])), figure))
    expect(slip[0]).toBeCloseTo(0.5, 9)
    expect(slip[3]).toBeLessThan(0.5)
  })

  test('a part of it, some steps, or once: not joined', () => {
    const figure = walks('foxtrot', [2, 1, 1])
    const session = withJoined(newSession(figure, beat(0)), true)
    expect(lessonOf(withSteps(session, { first: 0, last: 1 }), figure).joined).toBe(false)
    expect(lessonOf(withPart(session, { from: beat(0), to: beat(2) }), figure).joined).toBe(false)
    expect(lessonOf({ ...session, loop: false }, figure).joined).toBe(false)
  })

  test('the loop off and on again, or a part and then the whole again: joined as before, for that was chosen', () => {
    const figure = walks('foxtrot', [2, 1, 1])
    const session = withJoined(newSession(figure, beat(0)), true)
    const once = withLoop(session, false)
    expect(lessonOf(once, figure)).toMatchObject({ joined: false, repeats: false })
    expect(lessonOf(withLoop(once, true), figure).joined).toBe(true)
    const part = withPart(session, { from: beat(0), to: beat(2) })
    expect(lessonOf(withLoop(part, true), figure).joined).toBe(true)
  })
})

describe('a part of a figure', () => {
  const figure = walks('waltz', [1, 1, 1, 1, 1, 1])

  test('the second bar: led in by step 3, in rounds of whole bars', () => {
    const lesson = lessonOf(withPart(newSession(figure, beat(0)), { from: beat(3), to: beat(6) }), figure)
    expect(lesson.part).toEqual({ from: 3, to: 6, first: 3 })
    expect(lesson.steps).toEqual({ first: 2, last: 5 })
    expect(lesson.round % 3).toBe(0)
    expect(lesson.range.to - lesson.range.from).toBe(lesson.round)
    // Whoever is latest is done before it begins again.
    for (const { performance } of lesson.panels) expect(performance.curve.to).toBeLessThanOrEqual(lesson.range.to)
    expect(lesson.repeats).toBe(true)
  })
})
