import { describe, expect, test } from 'vitest'
import { atTempo, beatAt, isOver, paused, playing, soughtTo, standingClock, within } from '../../src/clock/clock.ts'
import { beat, seconds } from '../../src/units.ts'

const range = { from: beat(-0.5), to: beat(3.5) }
const standing = standingClock(range, seconds(0.5), null, seconds(10))

describe('beatAt(clock, now)', () => {
  test('stands at the start of the range until it is played', () => {
    expect(beatAt(standing, seconds(99))).toBe(-0.5)
  })
  test('goes on by the tempo, asked at any times in any order', () => {
    const clock = playing(standing, seconds(20))
    expect([21, 20.25, 20.5].map((now) => beatAt(clock, seconds(now)))).toEqual([1.5, 0, 0.5])
  })
  test('without a round it ends at the end of the range', () => {
    const clock = playing(standing, seconds(20))
    expect(beatAt(clock, seconds(60))).toBe(3.5)
    expect([isOver(clock, seconds(21.99)), isOver(clock, seconds(22))]).toEqual([false, true])
  })
  test('in a round the end is the start', () => {
    const clock = playing(standingClock(range, seconds(0.5), beat(4), seconds(0)), seconds(0))
    expect([1.75, 2, 2.25, 40.25].map((now) => beatAt(clock, seconds(now)))).toEqual([3, -0.5, 0, 0])
    expect(isOver(clock, seconds(999))).toBe(false)
  })
  test('a time before the anchor is the anchor', () => {
    expect(beatAt(playing(standing, seconds(20)), seconds(19))).toBe(-0.5)
  })
})

describe('every change takes the beat first and anchors anew', () => {
  const clock = playing(standing, seconds(20))
  test('atTempo: the beat now stays the beat now', () => {
    const slower = atTempo(clock, seconds(2), seconds(21))
    expect([beatAt(slower, seconds(21)), beatAt(slower, seconds(22))]).toEqual([1.5, 2])
  })
  test('paused, then playing: no time is lost or won', () => {
    const again = playing(paused(clock, seconds(21)), seconds(50))
    expect([beatAt(again, seconds(50)), beatAt(again, seconds(50.5))]).toEqual([1.5, 2.5])
  })
  test('soughtTo: held inside the range, and goes on', () => {
    expect(beatAt(soughtTo(clock, beat(99), seconds(21)), seconds(21))).toBe(3.5)
    expect(beatAt(soughtTo(clock, beat(0), seconds(21)), seconds(21.5))).toBe(1)
  })
  test('within another range: the beat is kept where the range allows it', () => {
    const shorter = within(clock, { from: beat(-0.5), to: beat(1) }, null, seconds(21))
    expect(beatAt(shorter, seconds(21))).toBe(1)
  })
  test('a change that is still to come: until then all goes on as it did, then by the new tempo, without a jump', () => {
    const soon = atTempo(clock, seconds(1), seconds(21))
    expect([20.5, 20.9, 21, 21.5].map((now) => beatAt(soon, seconds(now)))).toEqual(
      [0.5, 1.3, 1.5, 2].map((b) => expect.closeTo(b, 12)),
    )
    // Another before the first has come.
    const again = atTempo(soon, seconds(0.25), seconds(21.25))
    expect([20.5, 21.1, 21.25, 21.5].map((now) => beatAt(again, seconds(now)))).toEqual(
      [0.5, 1.6, 1.75, 2.75].map((b) => expect.closeTo(b, 12)),
    )
    expect(beatAt(paused(soon, seconds(20.5)), seconds(99))).toBe(0.5)
  })
  test('what is past is forgotten: a thousand changes leave one former clock', () => {
    let long = clock
    for (let k = 0; k < 1000; k++) long = atTempo(long, seconds(0.5 + (k % 7) / 10), seconds(21 + 2 * k))
    let depth = 0
    for (let one: typeof long | undefined = long; one !== undefined; one = one.former) depth++
    expect(depth).toBeLessThanOrEqual(3)
  })
  test('playing at the end begins again', () => {
    expect(beatAt(playing(soughtTo(standing, beat(3.5), seconds(0)), seconds(0)), seconds(0))).toBe(-0.5)
  })
})
