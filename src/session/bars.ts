import type { Range } from '../clock/clock.ts'
import { musicPlace } from '../timing/counts.ts'
import type { Schedule } from '../timing/schedule.ts'
import { beat } from '../units.ts'

const ROUNDING = 1e-9
/** Beats that lie surely before an end. */
const BEFORE = 1e-6

/** Where the bar begins in which the figure does, in beats: 0 or before. */
function firstBar(schedule: Schedule): number {
  const { count, part } = musicPlace(schedule, 0)
  return -(count - 1 + part)
}

/** How many bars a figure is danced in, the first and the last perhaps in part. */
export const barsOf = (schedule: Schedule): number =>
  Math.max(1, Math.ceil((schedule.length - firstBar(schedule)) / schedule.beatsPerBar - ROUNDING))

/** The bar in which a beat lies, from 0 on; of the figure's bars the nearest. */
const barAt = (schedule: Schedule, at: number): number => {
  const bar = Math.floor((at - firstBar(schedule)) / schedule.beatsPerBar + ROUNDING)
  return Math.min(barsOf(schedule) - 1, Math.max(0, bar))
}

/**
 * So many whole bars of a figure from the bar at a beat on; where that is too near its end, its last ones.
 * @param count 1 to `barsOf(schedule)`
 * @throws RangeError when the figure has fewer
 */
export function barsFrom(schedule: Schedule, at: number, count: number): Range {
  const all = barsOf(schedule)
  if (!(count >= 1 && count <= all)) throw new RangeError(`a figure of ${all} bars has no ${count}`)
  const from = Math.min(barAt(schedule, at), all - count) * schedule.beatsPerBar + firstBar(schedule)
  return {
    from: beat(Math.max(0, from)),
    to: beat(Math.min(schedule.length, from + count * schedule.beatsPerBar)),
  }
}

/** How many whole bars a part of a figure is; null: it begins or ends within one. */
export function barsIn(schedule: Schedule, { from, to }: Range): number | null {
  const count = barAt(schedule, to - BEFORE) - barAt(schedule, from) + 1
  const whole = barsFrom(schedule, from, count)
  return Math.abs(whole.from - from) < ROUNDING && Math.abs(whole.to - to) < ROUNDING ? count : null
}
