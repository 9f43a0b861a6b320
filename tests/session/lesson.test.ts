import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lessonOf } from '../../src/session/lesson.ts'
import {
  newSession,
  type Session,
  withAmount,
  withLoop,
  withOpposite,
  withOrder,
  withSteps,
} from '../../src/session/session.ts'
import { beat } from '../../src/units.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'

const of = (figure: ReturnType<typeof walks>, change: (session: Session) => Session = (session) => session) =>
  lessonOf(change(newSession(figure, beat(0))), figure)

describe('lessonOf(session, figure)', () => {
  const sqq = walks('foxtrot', [2, 1, 1])
  test('S Q Q is played from the first leave to the latest full of any panel', () => {
    expect(of(sqq, (session) => withLoop(session, false)).range).toEqual({ from: -0.5, to: 4 })
  })
  test('late by ¼: rounded outwards to the grid', () => {
    expect(of(sqq, (session) => withLoop(withAmount(session, 'late', 0.25), false)).range).toEqual({
      from: -0.5,
      to: 4,
    })
  })
  test('a round of S Q Q lasts one bar when nobody is late, and two when somebody still moves at its end', () => {
    expect(of(sqq, (session) => withAmount(session, 'late', 0)).round).toBe(4)
    expect(of(sqq).round).toBe(8)
  })
  test('in a loop the count goes on to the end of the round', () => {
    expect(of(sqq).range).toEqual({ from: -0.5, to: 7.5 })
  })
  test('a figure of a bar and a half has rounds of whole bars', () => {
    expect(of(walks('quickstep', [2, 1, 1, 2]), (session) => withAmount(session, 'late', 0)).round).toBe(8)
  })
  test('only the panels on the screen count: in time alone, S Q Q lasts one bar', () => {
    const alone = of(sqq, (session) => withOrder(session, [0]))
    expect([alone.range, alone.round]).toEqual([{ from: -0.5, to: 3.5 }, 4])
  })
  test('a few steps: from the first one’s leave to the last panel’s full, then a beat’s breath, in whole beats', () => {
    const drilled = of(sqq, (session) => withSteps(withLoop(session, false), { first: 0, last: 1 }))
    // Leaves at −½; late by ½, the quick is full at 3: three and a half beats, four when whole, five with the breath.
    expect([drilled.range, drilled.round, drilled.repeats]).toEqual([{ from: -0.5, to: 4.5 }, 5, true])
    for (const { performance } of drilled.panels) {
      expect(performance.curve.at(-9)).toBe(0)
      expect(performance.curve.at(99)).toBe(2)
    }
  })
  test('steps chosen in a longer figure are held inside this one', () => {
    expect(of(sqq, (session) => withSteps(session, { first: 7, last: 8 })).steps).toEqual({ first: 2, last: 2 })
  })
  test('the partner: danced by the opposite, written as it is', () => {
    const partner = of(sqq, (session) => withOpposite(session, true))
    expect([partner.figure.role, partner.written.role]).toEqual(['follower', 'leader'])
    expect(partner.figure.firstFoot).toBe('left')
    expect(partner.schedule.actions.map(({ moments }) => moments)).toEqual(
      of(sqq).schedule.actions.map(({ moments }) => moments),
    )
  })
  test('struck: an early panel leaves before the plan, so the range begins there', () => {
    expect(of(walks('paso doble', [1, 1])).range.from).toBe(-1)
  })
  test('the loop changes no curve; every round is whole bars and long enough', () => {
    fc.assert(
      fc.property(generatedFigure(), fc.integer({ min: 0, max: 4 }), (figure, quarters) => {
        const change = (loop: boolean) => (session: Session) =>
          withLoop(withAmount(withAmount(session, 'late', quarters / 4), 'early', 0.25), loop)
        const [once, looped] = [of(figure, change(false)), of(figure, change(true))]
        for (const [k, panel] of once.panels.entries())
          expect(looped.panels[k]?.performance.curve.knots).toEqual(panel.performance.curve.knots)
        expect(looped.round % looped.schedule.beatsPerBar).toBe(0)
        const leaves = Math.min(...looped.panels.map(({ performance }) => performance.curve.from))
        const full = Math.max(...looped.panels.map(({ performance }) => performance.curve.to))
        expect(full).toBeLessThanOrEqual(leaves + looped.round + 1e-9)
        expect(looped.round - looped.schedule.length).toBeLessThan(2 * looped.schedule.beatsPerBar)
      }),
      THOUSAND,
    )
  })
})
