import type { Counting } from '../dance/dance.ts'
import { type Count, countAt, musicPlace, partSign } from '../timing/counts.ts'
import type { Comparison } from '../transfer/comparison.ts'

/** The count to show large at a grid point. */
export const countNow = ({ schedule, dance }: Comparison, counting: Counting, t: number): Count =>
  countAt(schedule, dance, counting, t)

const SPOKEN = { '': '', '&': ' and', a: ' a', '·': ' and a quarter' } as const

/** The same in words for the ear: "bar 2, beat 3 and". */
export function countWords({ schedule }: Comparison, t: number): string {
  const { bar, count, part } = musicPlace(schedule, t)
  const spoken = `beat ${count}${SPOKEN[partSign(part)]}`
  return bar < 1 ? `before the first bar, ${spoken}` : `bar ${bar}, ${spoken}`
}
