import type { Range } from '../clock/clock.ts'
import { beat } from '../units.ts'
import type { Lesson } from './lesson.ts'

/**
 * Two beats of what is shown as beats of the figure danced once, the earlier first. A joined loop is shown from a later round
 * on: both go back to the round in which the earlier one lies.
 */
export function beatsOnce({ joined, once, range, round }: Lesson, one: number, other: number): Range {
  const [from, to] = [Math.min(one, other), Math.max(one, other)]
  const { length } = once.schedule
  const before = joined ? round + Math.floor((from - range.from) / length + 1e-9) * length : 0
  return { from: beat(from - before), to: beat(to - before) }
}
