import { actingFeet } from '../transfer/actingFeet.ts'
import { type Comparison, inCurve, momentErrors, rushes, waits } from '../transfer/comparison.ts'
import type { Performance } from '../transfer/performance.ts'
import { beatsInWords, fraction } from './fraction.ts'
import { listed } from './listed.ts'

/** Less than this, in beats, is not said. */
const HARDLY = 1 / 16

const SAME = 1e-9

const EIGHTHS = 8
/** As it is said: to eighths of a beat. */
const said = (beats: number): number => Math.round(Math.abs(beats) * EIGHTHS) / EIGHTHS

const stepsOf = (indices: readonly number[]): string =>
  `${indices.length === 1 ? 'step' : 'steps'} ${listed(runs(indices))}`

/** 1, 2, 3 and 5 as "1 to 3", "5". @param indices of actions, rising */
function runs(indices: readonly number[]): string[] {
  const found: { from: number; to: number }[] = []
  for (const index of indices) {
    const last = found.at(-1)
    if (last !== undefined && index === last.to + 1) last.to = index
    else found.push({ from: index, to: index })
  }
  return found.flatMap(({ from, to }) => {
    if (to - from < 2) return from === to ? [`${from + 1}`] : [`${from + 1}`, `${to + 1}`]
    return [`${from + 1} to ${to + 1}`]
  })
}

/** The action that a wait lies in, or after. */
function whereOf({ times }: Performance, from: number): { readonly at: number; readonly where: 'in' | 'after' } {
  const inside = times.findIndex(({ stands }) => stands !== undefined && Math.abs(stands.from - from) < SAME)
  if (inside >= 0) return { at: inside, where: 'in' }
  // A foot that comes without weight may have begun: the weight has not.
  return {
    at: Math.max(
      0,
      times.findLastIndex(({ full }) => full <= from + SAME),
    ),
    where: 'after',
  }
}

/** "½ beat late on steps 2 to 4" for those that are as late (+) or early (−) as each other. */
function errorsOf(danced: Performance, ideal: Performance): string[] {
  const groups = new Map<number, number[]>()
  for (const { index, moment, by } of momentErrors(danced, ideal)) {
    if (moment !== 'full' || Math.abs(by) < HARDLY) continue
    const size = Math.sign(by) * said(by)
    groups.set(size, [...(groups.get(size) ?? []), index])
  }
  const where = (indices: readonly number[]): string =>
    indices.length === danced.times.length && indices.length > 1 ? 'throughout' : `on ${stepsOf(indices)}`
  const sizes = [...groups.keys()]
  if (sizes.length > 2 && (sizes.every((size) => size > 0) || sizes.every((size) => size < 0))) {
    const [least, most] = [Math.min(...sizes.map(Math.abs)), Math.max(...sizes.map(Math.abs))]
    const indices = [...groups.values()].flat().sort((a, b) => a - b)
    return [
      `${fraction(least)} to ${beatsInWords(most)} ${(sizes[0] as number) > 0 ? 'late' : 'early'} ${where(indices)}`,
    ]
  }
  return [...groups].map(
    ([size, indices]) => `${beatsInWords(Math.abs(size))} ${size > 0 ? 'late' : 'early'} ${where(indices)}`,
  )
}

/** What begins late and is done in time: how late each is, by index. */
function begunOf(danced: Performance, ideal: Performance): ReadonlyMap<number, number> {
  const errors = momentErrors(danced, ideal)
  const found = new Map<number, number>()
  for (const [k, { index, moment, by }] of errors.entries()) {
    const full = errors[k + 2]
    if (moment === 'leaves' && full !== undefined && Math.abs(full.by) < HARDLY && by >= HARDLY)
      found.set(index, said(by))
  }
  return found
}

/** "steps 1 and 2 begin ½ beat late and hurry". */
function begunWords(begun: ReadonlyMap<number, number>): string[] {
  return [...new Set(begun.values())].map((size) => {
    const indices = [...begun].flatMap(([index, by]) => (by === size ? [index] : []))
    const [begin, hurry] = indices.length === 1 ? ['begins', 'hurries'] : ['begin', 'hurry']
    return `${stepsOf(indices)} ${begin} ${beatsInWords(size)} late and ${hurry}`
  })
}

/** @param begun a wait before one of these is said with it */
function waitsOf(danced: Performance, ideal: Performance, begun: ReadonlyMap<number, number>): string[] {
  const groups = new Map<string, number[]>()
  for (const { from, to } of waits(danced, ideal)) {
    if (to - from < HARDLY) continue
    const { at, where } = whereOf(danced, from)
    const size = said(to - from)
    if (where === 'after' && begun.get(at + 1) === size) continue
    const key = `waits ${beatsInWords(size)} ${where}`
    groups.set(key, [...(groups.get(key) ?? []), at])
  }
  return [...groups].map(([what, indices]) => `${what} ${stepsOf(indices)}`)
}

function weightOf({ schedule: { figure } }: Comparison, danced: Performance, ideal: Performance): string[] {
  const found: string[] = []
  const [feet, planned] = [danced, ideal].map(({ carried }) => actingFeet(figure, carried))
  // Of a part of the figure only what is danced is spoken of.
  const those = (is: (index: number) => boolean): number[] =>
    danced.carried.flatMap((_, index) => (inCurve(danced, index) && is(index) ? [index] : []))
  const planTakes = (index: number): number => ideal.carried[index] ?? 0
  const takes = (index: number): number => danced.carried[index] ?? 0
  const wrong = those((index) => feet?.[index] !== planned?.[index])
  const none = those((index) => takes(index) === 0 && planTakes(index) > 0)
  const less = those((index) => takes(index) > 0 && takes(index) < planTakes(index) - SAME)
  if (none.length > 0) found.push(`no change of weight on ${stepsOf(none)}`)
  if (wrong.length > 0) found.push(`${stepsOf(wrong)} with the wrong foot`)
  const [first] = less
  if (first !== undefined) {
    const part = fraction(danced.carried[first] as number)
    found.push(`${part} of the weight ${less.length === danced.carried.length ? 'throughout' : `on ${stepsOf(less)}`}`)
  }
  return found
}

/**
 * What is said of a whole performance: "Waits 1 beat after step 1; otherwise in time." Sizes to eighths of a beat.
 * @param panel index into the comparison's panels
 */
export function performanceWords(comparison: Comparison, panel: number): string {
  const { performance } = comparison.panels[panel] as Comparison['panels'][number]
  const { ideal } = comparison
  const errors = errorsOf(performance, ideal)
  const begun = begunOf(performance, ideal)
  const isInTime = errors.length + begun.size === 0
  const hurries = isInTime && rushes(performance, ideal).length > 0
  const found = [
    ...weightOf(comparison, performance, ideal),
    ...waitsOf(performance, ideal, begun),
    ...errors,
    ...begunWords(begun),
    ...(hurries ? ['hurries, and is in time at the end'] : []),
  ]
  if (found.length === 0) return 'In time throughout.'
  const text = `${found.join('; ')}${isInTime && !hurries ? '; otherwise in time' : ''}.`
  return text.slice(0, 1).toUpperCase() + text.slice(1)
}
