import type { Schedule } from '../timing/schedule.ts'
import { perform } from './perform.ts'
import type { Performance } from './performance.ts'
import type { Way } from './way.ts'

/** Less than this, in beats or in shares, is no change. */
const SAME = 1e-9

const flat = ({ curve, carried }: Performance): number[] => [...carried, ...curve.knots.flatMap(({ t, p }) => [t, p])]

/** Whether a way of dancing differs from the plan at all: a fault that cannot be made in a figure changes nothing. */
export function changes(schedule: Schedule, way: Way, shortest: number): boolean {
  const [danced, planned] = [perform(schedule, way, shortest), perform(schedule, { kind: 'in time' })].map(flat)
  if (danced === undefined || planned === undefined || danced.length !== planned.length) return true
  return danced.some((value, k) => Math.abs(value - (planned[k] as number)) > SAME)
}
