import { expect, test } from 'vitest'
import type { Checkpoint } from '../../src/figure/figure.ts'
import { trackAt, trackOf } from '../../src/pose/track.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { perform } from '../../src/transfer/perform.ts'
import { beat, beatValue } from '../../src/units.ts'
import { walks } from '../tools/exampleFigure.ts'

/** Waltz, 1 2 3: down until the end of 1, up on 3, down at the end of 3 (Alex Moore, Questions and Answers). */
const rise: readonly Checkpoint[] = [
  { at: beatValue(1, 2), value: 0 },
  { at: beatValue(2), value: 1 },
  { at: beatValue(5, 2), value: 0.5 },
]
const plan = schedule(walks('waltz', [1, 1, 1]))
const ideal = perform(plan, { kind: 'in time' })
const found = trackOf(rise, ideal.curve)
if (found === null) throw new Error('the track has checkpoints')
const track = found

test('trackOf(none, curve) is null: nothing is said of it', () => {
  expect(trackOf([], ideal.curve)).toBeNull()
})

test('trackAt(track, p) has each checkpoint’s value where the plan is at its time', () => {
  for (const { at, value } of rise) expect(trackAt(track, ideal.curve.at(at / 48))).toBeCloseTo(value, 12)
})

test('trackAt(track, p) is held before the first and after the last, and between them it stays between their values', () => {
  expect(trackAt(track, 0)).toBe(0)
  expect(trackAt(track, 3)).toBe(0.5)
  let last = 0
  for (let p = track[0]?.p ?? 0; p <= (track[1]?.p ?? 0); p += 1 / 64) {
    const now = trackAt(track, p)
    expect(now).toBeGreaterThanOrEqual(last)
    expect(now).toBeLessThanOrEqual(1)
    last = now
  }
})

test('trackAt(track, p): who is late by half a beat rises half a beat late', () => {
  const late = perform(plan, { kind: 'late', by: beat(0.5) })
  for (let t = 0; t <= 3; t += 1 / 8) {
    expect(trackAt(track, late.curve.at(t + 0.5))).toBeCloseTo(trackAt(track, ideal.curve.at(t)), 9)
  }
})

test('trackAt(track, p) of two checkpoints in one rest of the plan is the later one’s', () => {
  const resting = schedule(walks('paso doble', [2, 2]))
  const struck = perform(resting, { kind: 'in time' })
  const points = [beatValue(1, 2), beatValue(1)].map((at, k) => ({ at, value: k + 1 }))
  const both = trackOf(points, struck.curve)
  expect(both?.map(({ p }) => p)).toEqual([1, 1])
  expect(both && trackAt(both, 1)).toBe(2)
})
