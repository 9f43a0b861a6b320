import { expect } from 'vitest'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import { walks } from './exampleFigure.ts'
import type { Devices } from './fakeSound.ts'
import { apart, type SoundRoom, soundRoom } from './soundRoom.ts'

export const SQQ = walks('foxtrot', [2, 1, 1], { id: 'sqq' })
export const WALTZ = walks('waltz', [1, 1, 1, 1, 1, 1], { id: 'waltz' })
/** A round of one bar or two. */
export const SHORT = walks('foxtrot', [1, 1], { id: 'short' })
/** Eight bars of waltz: at a fifth of its tempo they last 80 s. */
export const LONG = walks(
  'waltz',
  Array.from({ length: 24 }, () => 1),
  { id: 'long' },
)

/** Sound on, and playing, for a second. */
export function playing(devices: Devices = {}, figures = [SQQ, WALTZ]): SoundRoom {
  const room = soundRoom(figures, devices)
  room.act(() => room.conductor.set({ on: true }))
  room.run(1)
  room.cut(() => room.player.play())
  room.run(1)
  return room
}

export const tempi = ({ player }: SoundRoom) => playedTempoRange(player.store.getState().lesson.dance)
export const samplesNow = ({ fake }: SoundRoom): number => fake.device.time * fake.device.sampleRate

/**
 * Nothing shown that is not heard, nothing heard that is not shown.
 * @param near seconds. Where one sound gives way to another, in 4 ms, a click of the old one may be heard within them
 */
export function expectHeard(room: SoundRoom, least: number, from = 0, near = 0.0005): void {
  const { shown, heard } = room.ticks(from)
  expect(shown.length).toBeGreaterThanOrEqual(least)
  expect(apart(shown, heard, near)).toEqual({ missing: [], more: [], worst: expect.any(Number) })
}
export const GIVING_WAY = 0.004
