import type { Convention } from '../dance/dance.ts'
import { calledAt } from '../timing/counts.ts'
import type { ScheduledAction } from '../timing/schedule.ts'
import { type Counted, countsIn } from './countWords.ts'
import { beatsInWords } from './fraction.ts'
import { provenanceWords } from './provenanceWords.ts'

/** The rule itself, said of the step that all know. */
const CONVENTION: Readonly<Record<Convention, string>> = {
  'split on the count': 'a one-beat step is half way on its count',
  'full on the count': 'a one-beat step is full on its count',
  struck: 'struck on the count, then still',
}

/** Where a moment lies from its action's own count. */
function fromCount(offset: number): string {
  if (Math.abs(offset) < 1e-9) return 'on the count'
  if (Math.abs(offset - 0.5) < 1e-9) return 'on the & after'
  if (Math.abs(offset + 0.5) < 1e-9) return 'on the & before'
  return `${beatsInWords(Math.abs(offset))} ${offset > 0 ? 'after' : 'before'} the count`
}

function nameOf({ value, sign }: ScheduledAction, hasSlows: boolean): string {
  if (sign === '&' || sign === 'a') return `an ${sign}`
  if (hasSlows && value === 2) return 'a slow'
  if (hasSlows && value === 1) return 'a quick'
  return `a step of ${beatsInWords(value)}`
}

const NO_WEIGHT = {
  hold: 'stands still, no weight moves',
  brush: 'brushes, no weight',
  tap: 'taps, no weight',
  point: 'points, no weight',
} as const

function momentsOf(scheduled: ScheduledAction, struck: boolean): string {
  const { action, called, value, moments } = scheduled
  if (action.weight === 0) {
    const { direction } = action
    return direction in NO_WEIGHT ? NO_WEIGHT[direction as keyof typeof NO_WEIGHT] : 'touches, no weight'
  }
  const over = action.weight < 1 ? 'part weight over' : 'fully over'
  const full = `${fromCount(moments.full - called)}: ${over}`
  if (struck) return 'on the count: foot and weight together, then still'
  if (value <= 0.5 || moments.full === called) return full
  return `${fromCount(moments.split - called)}: placed, half way; ${full}`
}

/** Before anybody dances. */
const COUNTED_IN = 'counted in: stand ready over the standing foot'
/** While the count goes on. */
const OVER = 'the steps are done: stand and count on until they begin again'

/**
 * The convention in the own words of the action that was called last ("a slow, on the & after: placed, half way; …"),
 * and where its timing comes from.
 */
export function conventionWords(lesson: Counted, t: number): { action: string; source: string } {
  const { schedule, dance, steps } = lesson
  const called = calledAt(schedule, t) ?? (schedule.actions[0] as ScheduledAction)
  const scheduled = schedule.actions[Math.min(called.index, steps?.last ?? called.index)] ?? called
  const last = schedule.actions[steps?.last ?? schedule.actions.length - 1] ?? scheduled
  const isOver = t >= last.called + last.value - 1e-9
  const struck = schedule.convention === 'struck'
  const { source } = schedule.timing
  // A figure that goes its own way has no source but its maker.
  const chosen =
    schedule.convention === dance.convention ? provenanceWords(dance.conventionSource) : 'set for this figure'
  return {
    action: countsIn(lesson, t)
      ? COUNTED_IN
      : isOver
        ? OVER
        : `${nameOf(scheduled, dance.signs.S !== null)}, ${momentsOf(scheduled, struck)}`,
    source: `Timing: ${provenanceWords(source)}. Weight: ${CONVENTION[schedule.convention]}, ${chosen}.`,
  }
}
