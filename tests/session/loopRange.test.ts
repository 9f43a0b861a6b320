import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Range } from '../../src/clock/clock.ts'
import { type LoopRange, loopRange } from '../../src/session/loopRange.ts'
import type { Steps } from '../../src/session/session.ts'
import { type Schedule, schedule } from '../../src/timing/schedule.ts'
import { wayOf } from '../../src/transfer/faults.ts'
import { onlySteps } from '../../src/transfer/onlySteps.ts'
import { perform } from '../../src/transfer/perform.ts'
import type { Performance } from '../../src/transfer/performance.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { exampleFigure, walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'

const planned = (scheduled: Schedule, { steps }: LoopRange): Performance =>
  onlySteps(perform(scheduled, { kind: 'in time' }), steps.first, steps.last)

const told = ({ part, steps, first, leadIn, round }: LoopRange): string =>
  `${part.from}–${part.to}: ${steps.first + 1}–${steps.last + 1}, from ${first + 1} after ${leadIn}; ${round}`

/**
 * Worked out by the rules: the step called on the first count of the part (or the one that goes on there), the one before it,
 * its leave, and the round. So 12, S Q Q S, 2 to 6: the slow before leaves at −½, the last slow is full at 5½, six beats, two
 * bars of four; 18, 1 a 2 in 2/4, full on the count: the 2 before leaves at ¾, from its count 1 to 4 are three beats, two bars.
 */
const DEMOS: readonly string[] = [
  '01 1–2: 1–1, from 1 after 1.5; 3 | 0–4: 1–3, from 1 after 0.5; 4',
  '02 1–2: 1–2, from 2 after 1.5; 3 | 0–4: 1–4, from 1 after 0.5; 4',
  '03 1–2: 1–2, from 2 after 1.5; 3 | 0–4: 1–4, from 1 after 0.5; 4',
  '04 1–2: 1–1, from 1 after 1.5; 3 | 0–4: 1–2, from 1 after 0.5; 4',
  '05 1–2: 1–2, from 2 after 1.5; 3 | 0–4: 1–4, from 1 after 0.5; 4',
  '06 1–2: 1–2, from 2 after 1.5; 3 | 3–6: 3–6, from 4 after 1.5; 6',
  '07 1–2: 1–3, from 2 after 1.5; 3 | 0–3: 1–4, from 1 after 0.5; 3',
  '08 1–2: 1–2, from 2 after 2; 3 | 4–8: 3–6, from 4 after 3; 8',
  '09 1–2: 1–2, from 2 after 1.5; 3 | 0–4: 1–4, from 1 after 0.5; 4',
  '10 1–2: 2–3, from 3 after 1; 3 | 0–3: 1–4, from 1 after 0.5; 3',
  '11 1–2: 1–2, from 2 after 1.5; 3 | 0–3: 1–4, from 1 after 0.5; 3',
  '12 1–2: 1–1, from 1 after 1.5; 3 | 2–6: 1–4, from 2 after 2.5; 8',
  '13 1–2: 1–2, from 2 after 1.5; 3 | 3–6: 3–6, from 4 after 1.5; 6',
  '14 1–2: 1–2, from 2 after 1.5; 3 | 0–4: 1–3, from 1 after 0.5; 4',
  '15 1–2: 1–2, from 2 after 1.5; 3 | 0–4: 1–3, from 1 after 0.5; 4',
  '16 1–2: 1–2, from 2 after 2; 3 | 4–8: 3–6, from 4 after 3; 8',
  '17 1–2: 1–2, from 2 after 2; 3 | 4–8: 5–10, from 6 after 1.5; 8',
  '18 1–2: 2–3, from 3 after 1; 3 | 2–4: 3–6, from 4 after 1.25; 4',
  '19 1–2: 1–2, from 2 after 2; 3 | 0–4: 1–5, from 1 after 1; 4',
  '20 1–2: 1–1, from 1 after 1.5; 3 | 2–6: 1–4, from 2 after 2.5; 8',
  '21 1–2: 1–2, from 2 after 1.5; 3 | 3–6: 3–6, from 4 after 1.5; 6',
  '22 1–2: 1–1, from 1 after 1.5; 3 | 14–18: 9–12, from 10 after 2.5; 8',
  '23 1–2: 1–2, from 2 after 1.5; 3 | 4–8: 4–8, from 5 after 1.5; 8',
  '24 1–2: 1–2, from 2 after 1.5; 3 | 4–8: 4–7, from 5 after 1.5; 8',
]

describe('loopRange(schedule, from, to)', () => {
  test('all demos: beat 1 to 2, and the last bar (steps, the first of the part, lead-in, round)', () => {
    const table = demos.map((figure) => {
      const scheduled = schedule(figure)
      const lastBar = loopRange(scheduled, scheduled.length - scheduled.beatsPerBar, scheduled.length)
      return `${figure.id.slice(0, 2)} ${told(loopRange(scheduled, 1, 2))} | ${told(lastBar)}`
    })
    expect(table).toEqual(DEMOS)
  })
  test('the second half of a waltz box: the close leads in, and the round is two bars', () => {
    const box = exampleFigure('waltz', [1, 1, 1, 1, 1, 1], ['forward', 'side', 'close', 'back', 'side', 'close'])
    expect(loopRange(schedule(box), 3, 6)).toEqual({
      part: { from: 3, to: 6 },
      steps: { first: 2, last: 5 },
      first: 3,
      // The close on 2 leaves at 1½; the last is full at 5½: four beats, two bars of three.
      leadIn: 1.5,
      range: { from: 1.5, to: 7.5 },
      round: 6,
    })
  })
  test('the whole of a figure is what the loop of the figure is: whole bars from its first leave', () => {
    expect(told(loopRange(schedule(walks('foxtrot', [2, 1, 1])), 0, 4))).toBe('0–4: 1–3, from 1 after 0.5; 4')
  })
  test('either end may be dragged over the other', () => {
    const scheduled = schedule(walks('quickstep', [1, 1, 1, 1, 1, 1, 1, 1]))
    expect(loopRange(scheduled, 6, 2)).toEqual(loopRange(scheduled, 2, 6))
  })
  test('half a beat is the least; under it lies the step that goes on', () => {
    const slow = schedule(walks('foxtrot', [1, 2, 1]))
    expect(told(loopRange(slow, 2, 2))).toBe('2–2.5: 1–2, from 2 after 2.5; 4')
    const samba = schedule(walks('samba', [0.75, 0.25, 1]))
    expect(samba.grid).toBe(0.25)
    expect(loopRange(samba, 0.75, 0.75).part).toEqual({ from: 0.75, to: 1.25 })
  })
  test('beyond the figure it is held in it', () => {
    const scheduled = schedule(walks('tango', [1, 1, 2]))
    expect(loopRange(scheduled, -7, 99).part).toEqual({ from: 0, to: 4 })
    expect(loopRange(scheduled, 50, 99).part).toEqual({ from: 3.5, to: 4 })
    expect(() => loopRange(scheduled, Number.NaN, 1)).toThrow(RangeError)
  })
  test('who is late has time in the round: the panels’ own moves are taken', () => {
    const scheduled = schedule(walks('foxtrot', [1, 1, 1, 1, 1, 1, 1, 1]))
    const both = [perform(scheduled, { kind: 'in time' }), perform(scheduled, wayOf('late', 0.5), 0.5)]
    const moves = ({ first, last }: Steps): Range => {
      const curves = both.map((one) => onlySteps(one, first, last).curve)
      return {
        from: beat(Math.min(...curves.map(({ from }) => from))),
        to: beat(Math.max(...curves.map(({ to }) => to))),
      }
    }
    const [plain, slow] = [loopRange(scheduled, 2, 4), loopRange(scheduled, 2, 4, moves)]
    expect(slow.steps).toEqual(plain.steps)
    // From the leave at ½ to the full at 3½, or half a beat later: three beats or three and a half, and a beat’s breath.
    expect([plain.round, slow.round]).toEqual([4, 5])
    expect(slow.range.to).toBeGreaterThanOrEqual(moves(slow.steps).to)
  })

  const anyPart = fc.tuple(fc.double({ min: -3, max: 25, noNaN: true }), fc.double({ min: -3, max: 25, noNaN: true }))
  test('generated figures: in the figure, on the grid, danced within the round, which is whole bars or beats', () => {
    fc.assert(
      fc.property(generatedFigure(), anyPart, (figure, [one, other]) => {
        const scheduled = schedule(figure)
        const loop = loopRange(scheduled, one, other)
        const { part, steps, first, leadIn, range, round } = loop
        const { length, grid, beatsPerBar, actions } = scheduled
        expect(part.from >= 0 && part.to <= length && part.to - part.from >= Math.min(0.5, length)).toBe(true)
        expect(Number.isInteger(part.from / grid)).toBe(true)
        expect(steps.first >= 0 && steps.first <= first && first <= steps.last && steps.last < actions.length).toBe(
          true,
        )
        expect(first - steps.first).toBe(first === 0 ? 0 : 1)
        expect(range.from + leadIn).toBeCloseTo(part.from, 9)
        expect(range.to - range.from).toBeCloseTo(round, 9)
        const { curve } = planned(scheduled, loop)
        expect(curve.from).toBeGreaterThanOrEqual(range.from - 1e-9)
        expect(curve.to).toBeLessThanOrEqual(range.to + 1e-9)
        const isLong = part.to - part.from >= beatsPerBar
        expect(round % (isLong ? beatsPerBar : 1)).toBe(0)
        // No longer than it must be: less than a bar, or a beat beside the breath, is left over.
        const needed = Math.max(curve.to - range.from, part.to - (actions[steps.first]?.called ?? 0))
        expect(round - needed).toBeLessThan((isLong ? beatsPerBar : 2) + grid)
      }),
      THOUSAND,
    )
  })
  test('generated figures: every action that is called in the part is danced', () => {
    fc.assert(
      fc.property(generatedFigure(), anyPart, (figure, [one, other]) => {
        const scheduled = schedule(figure)
        const { part, steps, first } = loopRange(scheduled, one, other)
        for (const { index, called } of scheduled.actions) {
          if (called >= part.from && called < part.to) expect(index >= first && index <= steps.last).toBe(true)
        }
      }),
      THOUSAND,
    )
  })
  test('the first step of the part is entered moving, as fast as in the whole figure', () => {
    for (const values of [
      [1, 1, 1, 1, 1, 1],
      [2, 1, 1, 2, 1, 1],
    ]) {
      const scheduled = schedule(walks('foxtrot', values))
      const whole = perform(scheduled, { kind: 'in time' })
      for (const { index, called, moments } of scheduled.actions.slice(1, -1)) {
        const loop = loopRange(scheduled, called, called + 1)
        expect(loop.first).toBe(index)
        const { curve } = planned(scheduled, loop)
        expect(curve.speed(moments.leaves)).toBeGreaterThan(0.3)
        expect(curve.speed(moments.leaves)).toBeCloseTo(whole.curve.speed(moments.leaves), 9)
        expect(onlySteps(whole, index, index).curve.speed(moments.leaves)).toBe(0)
      }
    }
  })
})
