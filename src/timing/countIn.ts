import { type Beat, beat } from '../units.ts'
import { musicPlace } from './counts.ts'
import type { Schedule } from './schedule.ts'

/** The choices, in bars; 0: it begins at once. Common practice, no source. */
export const COUNT_IN_BARS = [0, 1, 2] as const
export type CountInBars = (typeof COUNT_IN_BARS)[number]

/**
 * Where counting in begins: whole bars before the bar in which the first action is called. Of an action that is called within
 * its bar, that bar's beats before it are counted as well, as before a pick-up. Common practice, no source.
 * @param first the action that is danced first, by index
 * @param bars 1 or more
 * @throws RangeError when there is no such action
 */
export function countInFrom(schedule: Schedule, first: number, bars: number): Beat {
  const called = schedule.actions[first]?.called
  if (called === undefined) throw new RangeError(`there is no action ${first}`)
  const { count, part } = musicPlace(schedule, called)
  return beat(called - part - (count - 1) - bars * schedule.beatsPerBar)
}
