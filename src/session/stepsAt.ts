import { calledAt } from '../timing/counts.ts'
import type { Schedule } from '../timing/schedule.ts'
import type { Steps } from './session.ts'

/**
 * The step that is called last at a beat, and the one before it: how one comes into a step is half of it. At the first, that
 * and the second.
 */
export function stepsAt(schedule: Schedule, at: number): Steps {
  const called = calledAt(schedule, at)?.written ?? 0
  const last = Math.min(Math.max(1, called), schedule.figure.actions.length - 1)
  return { first: Math.max(0, last - 1), last }
}
