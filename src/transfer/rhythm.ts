import { type Schedule, schedule as scheduleOf } from '../timing/schedule.ts'
import { type BeatValue, beatValue, sumOfValues } from '../units.ts'
import type { ActionTimes } from './performance.ts'
import { isOn, type Way } from './way.ts'

/** The same actions with other beat values, in the same convention: counts wrongly remembered. */
type Rhythm = Extract<Way, { kind: 'cut short' | 'misplaced' | 'evened' }>

const BEAT = beatValue(1)

/** Every slow that is danced so is as short as a quick. */
function cutShort(values: readonly BeatValue[], way: Way): readonly BeatValue[] {
  const quicks = values.filter((value) => value >= BEAT)
  const quick = quicks.length === 0 ? BEAT : (Math.min(...quicks) as BeatValue)
  const shortest = quick < 2 * BEAT ? quick : BEAT
  return values.map((value, index) => (value >= 2 * shortest && isOn(way, index) ? shortest : value))
}

/** Neighbours that share a beat: from, to (not included). */
type Split = { readonly from: number; readonly to: number }

/** The runs of actions that are shorter than a beat and fill one together. */
function splitBeats(values: readonly BeatValue[]): Split[] {
  const found: Split[] = []
  for (let from = 0; from < values.length; from++) {
    let to = from
    let sum = 0
    while (to < values.length && (values[to] as number) < BEAT && sum < BEAT) sum += values[to++] as number
    if (sum !== BEAT) continue
    found.push({ from, to })
    from = to - 1
  }
  return found
}

/** Each split beat changes places with the whole beat before it; the one after it, where there is none before. */
function misplaced(values: readonly BeatValue[]): readonly BeatValue[] {
  const next = [...values]
  for (const { from, to } of splitBeats(values)) {
    const split = values.slice(from, to)
    if (from > 0 && (next[from - 1] as number) >= BEAT)
      next.splice(from - 1, to - from + 1, ...split, next[from - 1] as BeatValue)
    else if (to < values.length && (next[to] as number) >= BEAT)
      next.splice(from, to - from + 1, next[to] as BeatValue, ...split)
  }
  return next
}

/**
 * Each split beat loses its rhythm: unequal parts of a beat become equal ones (¾ ¼ as ½ ½); with equal parts all actions
 * of its bar of music take equally long (1 ½ ½ 1 as ¾ each), where that can be said exactly.
 * @param barLength, before in 1/48 beat: of a bar, and what of the first has gone by when the figure begins
 */
function evened(values: readonly BeatValue[], barLength: number, before: number): readonly BeatValue[] {
  const next = [...values]
  const share = (from: number, to: number): void => {
    const sum = sumOfValues(values.slice(from, to))
    if (sum % (to - from) !== 0) return
    next.fill((sum / (to - from)) as BeatValue, from, to)
  }
  let start = 0
  let sum = before
  for (let index = 0; index < values.length; index++) {
    sum += values[index] as number
    if (sum < barLength && index < values.length - 1) continue
    const inBar = splitBeats(values.slice(start, index + 1)).map(({ from, to }) => ({
      from: from + start,
      to: to + start,
    }))
    const unequal = inBar.filter(({ from, to }) => new Set(values.slice(from, to)).size > 1)
    if (unequal.length > 0) for (const { from, to } of unequal) share(from, to)
    else if (inBar.length > 0) share(start, index + 1)
    start = index + 1
    sum = 0
  }
  return next
}

/** When each action happens with the values of a wrong rhythm. */
export function inRhythm(schedule: Schedule, way: Rhythm): readonly ActionTimes[] {
  const { figure, timing, beatsPerBar } = schedule
  const values =
    way.kind === 'cut short'
      ? cutShort(timing.values, way)
      : way.kind === 'misplaced'
        ? misplaced(timing.values)
        : evened(timing.values, beatsPerBar * BEAT, (schedule.firstCount - 1) * BEAT)
  return scheduleOf({ ...figure, timings: [{ ...timing, values }] }).actions.map(({ moments }) => moments)
}
