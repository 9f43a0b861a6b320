import { calledAt } from './counts.ts'
import type { Schedule } from './schedule.ts'

const NEAR = 1e-9

/** Where only some of a figure's actions are danced: whether what is called last at `t`, or would be, comes after them. */
export function isAfterSteps(
  schedule: Schedule,
  { first, last }: { readonly first: number; readonly last: number },
  t: number,
): boolean {
  const some = first > 0 || last < schedule.actions.length - 1
  return some && ((calledAt(schedule, t)?.index ?? -1) > last || t >= schedule.length - NEAR)
}
