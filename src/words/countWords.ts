import type { Counting } from '../dance/dance.ts'
import { type Count, countAt, musicPlace, partSign } from '../timing/counts.ts'
import { isAfterSteps } from '../timing/isAfterSteps.ts'
import { isWholeBars } from '../timing/wholeBars.ts'
import type { Comparison } from '../transfer/comparison.ts'

/** What is counted: where only some steps are danced, which is the last of them; and from where on anybody dances. */
export type Counted = Comparison & {
  readonly steps?: { readonly first: number; readonly last: number }
  readonly range?: { readonly from: number }
  /** Beats from the start of a round to the start of the next. */
  readonly round?: number
}

/** While nobody dances: the beats of the bar, with their halves where one counts in half beats. */
function musicNow({ schedule }: Comparison, counting: Counting, t: number): Count {
  const { count, part } = musicPlace(schedule, t)
  const sign = counting === 'half beats' ? partSign(part) : ''
  return { text: sign === '' ? String(count) : sign, called: part < 1e-9 }
}

/** Whether it is counted in at `t`. */
export const countsIn = ({ range }: Counted, t: number): boolean => range !== undefined && t < range.from - 1e-9

/**
 * The count to show large at a grid point; before the first and after the last step that is danced the music's beats, for what
 * is called there is not danced; a dot where rounds are not bars of music.
 */
export function countNow(lesson: Counted, counting: Counting, t: number): Count {
  if (countsIn(lesson, t)) return musicNow(lesson, counting, t)
  const { schedule, dance, steps } = lesson
  if (steps === undefined || !isAfterSteps(schedule, steps, t)) return countAt(schedule, dance, counting, t)
  // In a round that is no whole bars the numbers would leap.
  return isWholeBars(lesson.round ?? 0, schedule) ? musicNow(lesson, counting, t) : { text: '·', called: false }
}

const SPOKEN = { '': '', '&': ' and', a: ' a', '·': ' and a quarter' } as const

/** The same in words for the ear: "bar 2, beat 3 and". */
export function countWords({ schedule }: Comparison, t: number): string {
  const { bar, count, part } = musicPlace(schedule, t)
  const spoken = `beat ${count}${SPOKEN[partSign(part)]}`
  return bar < 1 ? `before the first bar, ${spoken}` : `bar ${bar}, ${spoken}`
}
