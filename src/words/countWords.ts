import type { Counting } from '../dance/dance.ts'
import { type Count, calledAt, countAt, musicPlace, partSign } from '../timing/counts.ts'
import type { Comparison } from '../transfer/comparison.ts'

/** What is counted: where only some steps are danced, which is the last of them. */
type Counted = Comparison & { readonly steps?: { readonly last: number } }

/** The count to show large at a grid point; a dot after the last step that is danced, for what is called there is not. */
export function countNow({ schedule, dance, steps }: Counted, counting: Counting, t: number): Count {
  const called = calledAt(schedule, t)
  if (steps === undefined || called === null || called.index <= steps.last) return countAt(schedule, dance, counting, t)
  return { text: '·', called: false }
}

const SPOKEN = { '': '', '&': ' and', a: ' a', '·': ' and a quarter' } as const

/** The same in words for the ear: "bar 2, beat 3 and". */
export function countWords({ schedule }: Comparison, t: number): string {
  const { bar, count, part } = musicPlace(schedule, t)
  const spoken = `beat ${count}${SPOKEN[partSign(part)]}`
  return bar < 1 ? `before the first bar, ${spoken}` : `bar ${bar}, ${spoken}`
}
