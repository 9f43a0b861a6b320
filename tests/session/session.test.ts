import { describe, expect, test } from 'vitest'
import {
  newSession,
  revealed,
  withAmount,
  withBeat,
  withCounting,
  withFigure,
  withLoop,
  withNamesOff,
  withOpposite,
  withOrder,
  withSeen,
  withSteps,
  withTempo,
  withTiming,
} from '../../src/session/session.ts'
import { beat } from '../../src/units.ts'
import { walks } from '../tools/exampleFigure.ts'

const figure = walks('foxtrot', [2, 1, 1])
const session = newSession(figure, beat(-0.5))

describe('newSession(figure, beat)', () => {
  test('three panels, the middle of the dance’s range (foxtrot 28–30 bars a minute), its own counting', () => {
    expect(session.panels.map(({ way }) => way)).toEqual([
      { kind: 'in time' },
      { kind: 'late', by: 0.5 },
      { kind: 'early', part: 0.5 },
    ])
    expect(session.barsPerMinute).toBe(29)
    expect(session.counting).toBe('slows and quicks')
    expect(session.names).toBe(true)
  })
  test('is plain data', () => {
    expect(JSON.parse(JSON.stringify(session))).toEqual(session)
  })
})

describe('the actions', () => {
  test('tempo is held inside 20–125 % of the default', () => {
    expect(withTempo(session, figure, 1).barsPerMinute).toBeCloseTo(5.8, 12)
    expect(withTempo(session, figure, 99).barsPerMinute).toBeCloseTo(36.25, 12)
    expect(withTempo(session, figure, 14.5).barsPerMinute).toBe(14.5)
  })
  test('late is held in [0, 1] beats and changes the late panel only', () => {
    expect(withAmount(session, 'late', 7).panels.map(({ way }) => way)).toEqual([
      { kind: 'in time' },
      { kind: 'late', by: 1 },
      { kind: 'early', part: 0.5 },
    ])
    expect(withAmount(session, 'late', -1).panels[1]?.way).toEqual({ kind: 'late', by: 0 })
  })
  test('early is held in [¼, 1] of the step’s time', () => {
    expect(withAmount(session, 'early', 0).panels[2]?.way).toEqual({ kind: 'early', part: 0.25 })
    expect(withAmount(session, 'early', 0.75).panels[2]?.way).toEqual({ kind: 'early', part: 0.75 })
  })
  test('the timing is held inside the figure’s timings', () => {
    const two = { ...figure, timings: [figure.timings[0], figure.timings[0]] as const }
    expect(withTiming(session, two, 1).timing).toBe(1)
    expect(withTiming(session, two, 7).timing).toBe(1)
    expect(withTiming(session, figure, 1).timing).toBe(0)
    expect(withTiming(session, figure, -1).timing).toBe(0)
  })
  test('another figure keeps how late, how early, the loop and the names', () => {
    const changed = withLoop(withAmount(withNamesOff(session, [2, 0, 1]), 'late', 0.25), false)
    const waltz = withFigure(changed, walks('waltz', [1, 1, 1], { id: 'other' }), beat(-0.5))
    expect(waltz).toMatchObject({
      figure: 'other',
      loop: false,
      names: false,
      order: [2, 0, 1],
      barsPerMinute: 29,
      // Not by bars, whose number would contradict the 1 at the step.
      counting: 'half beats',
    })
    expect(waltz.panels[1]?.way).toEqual({ kind: 'late', by: 0.25 })
  })
  test('names off shuffles; revealed leaves the panels where they stand; the next figure puts them in their usual order', () => {
    const off = withNamesOff(session, [1, 2, 0])
    expect(revealed(off)).toMatchObject({ names: true, order: [1, 2, 0] })
    expect(withFigure(revealed(off), figure, beat(0)).order).toEqual([0, 1, 2])
    expect(withFigure(off, figure, beat(0)).order).toEqual([1, 2, 0])
  })
  test('other panels, in any order; what names none, or one twice, is left out, and one at least stays', () => {
    expect(withOrder(session, [2, 0]).order).toEqual([2, 0])
    expect(withOrder(session, [1, 7, 1, -1, 0]).order).toEqual([1, 0])
    expect(withOrder(session, []).order).toEqual([0, 1, 2])
  })
  test('another figure keeps which panels are shown, put in order, and from where; not its steps, nor the partner', () => {
    const chosen = withOpposite(withSteps(withSeen(withOrder(session, [2, 0]), 'mirror'), { first: 0, last: 1 }), true)
    expect(withFigure(chosen, walks('waltz', [1, 1, 1]), beat(0))).toMatchObject({
      order: [0, 2],
      seen: 'mirror',
      steps: null,
      opposite: false,
    })
  })
  test('another figure at the same part of its own tempo', () => {
    const half = withFigure(session, walks('quickstep', [1, 1]), beat(0), 0.5)
    const whole = withFigure(session, walks('quickstep', [1, 1]), beat(0))
    expect(half.barsPerMinute).toBe(whole.barsPerMinute / 2)
  })
  test('the loop of the whole figure ends that of a step', () => {
    const drilled = withSteps(session, { first: 0, last: 1 })
    expect(withLoop(drilled, true)).toMatchObject({ loop: true, steps: null })
    expect(withSteps(drilled, null).steps).toBeNull()
  })
  test('none changes the session it is given', () => {
    const before = JSON.stringify(session)
    withBeat(session, beat(1))
    withCounting(session, 'half beats')
    withAmount(session, 'early', 0.25)
    expect(JSON.stringify(session)).toBe(before)
  })
})
