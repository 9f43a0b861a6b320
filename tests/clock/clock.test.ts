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
  test('playing at the end begins again', () => {
    expect(beatAt(playing(soughtTo(standing, beat(3.5), seconds(0)), seconds(0)), seconds(0))).toBe(-0.5)
  })
})
