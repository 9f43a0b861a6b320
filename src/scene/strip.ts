import { musicPlace } from '../timing/counts.ts'
import { gridPoints } from '../timing/grid.ts'
import { actingFeet } from '../transfer/actingFeet.ts'
import { type Comparison, type MomentError, momentErrors, rushes, waits } from '../transfer/comparison.ts'
import type { Performance } from '../transfer/performance.ts'

/** The weight over time, for all panels on one axis: beats across, between the feet up and down. */
export type Strip = {
  readonly from: number
  readonly to: number
  readonly grid: readonly StripGridPoint[]
  readonly lines: readonly StripLine[]
}

export type StripGridPoint = {
  readonly beat: number
  readonly onCount: boolean
  readonly barStart: boolean
  readonly phraseStart: boolean
}

export type StripLine = {
  /** Index into the comparison's panels. */
  readonly panel: number
  /** `right`: where the weight is, 0 = over the left foot, 1 = over the right. */
  readonly points: readonly { readonly t: number; readonly right: number }[]
  /** Where it stands still longer than the plan has it rest. */
  readonly waits: readonly Stretch[]
  /** Where it goes clearly faster than planned. */
  readonly rushes: readonly Stretch[]
  /** When the weight is split and full, with how far off that is; in the order of the actions. */
  readonly moments: readonly StripMoment[]
}

export type StripMoment = MomentError & {
  readonly moment: 'split' | 'full'
  /** The weight's place, as in `points`. */
  readonly right: number
}

const SAMPLES_A_BEAT = 16
const ROUNDING = 1e-9

type Stretch = { readonly from: number; readonly to: number }

/** The share over the right foot when each action is done, the start first. */
function restsOnRight({ schedule }: Comparison, { carried }: Performance): number[] {
  const feet = actingFeet(schedule.figure, carried)
  const rests = [schedule.figure.firstFoot === 'right' ? 0 : 1]
  for (const [index, foot] of feet.entries()) {
    const share = carried[index] as number
    const held = schedule.figure.actions[index]?.direction === 'hold'
    rests.push(held ? (rests[index] as number) : foot === 'right' ? share : 1 - share)
  }
  return rests
}

/**
 * The strip from `from` to `to`, beats.
 * @param shown the panels that have a line, by index
 */
export function strip(
  comparison: Comparison & { readonly range: { readonly from: number; readonly to: number } },
  shown: readonly number[] = comparison.panels.map((_, index) => index),
): Strip {
  const { schedule, dance, ideal, panels, range } = comparison
  const grid = gridPoints(range.from, range.to, schedule.grid).map((beat) => {
    const { bar, count, part } = musicPlace(schedule, beat)
    const barStart = count === 1 && part === 0
    return { beat, onCount: part === 0, barStart, phraseStart: barStart && (bar - 1) % dance.barsPerPhrase === 0 }
  })
  const isIn = (t: number): boolean => t > range.from - ROUNDING && t < range.to + ROUNDING
  const seen = (all: readonly Stretch[]): Stretch[] =>
    all.flatMap(({ from, to }) => {
      const within = { from: Math.max(from, range.from), to: Math.min(to, range.to) }
      return within.to - within.from > ROUNDING ? [within] : []
    })
  const lines = panels.flatMap(({ performance }, panel) => {
    if (!shown.includes(panel)) return []
    const rests = restsOnRight(comparison, performance)
    const times = new Set<number>()
    for (let k = Math.round(range.from * SAMPLES_A_BEAT); k <= range.to * SAMPLES_A_BEAT; k++)
      times.add(k / SAMPLES_A_BEAT)
    for (const { t } of performance.curve.knots) if (isIn(t)) times.add(t)
    const points = [...times]
      .sort((a, b) => a - b)
      .map((t) => {
        const p = performance.curve.at(t)
        const index = Math.min(rests.length - 2, Math.floor(p))
        const [before, after] = [rests[index] as number, rests[index + 1] as number]
        return { t, right: before + (p - index) * (after - before) }
      })
    const moments = momentErrors(performance, ideal).flatMap((error): StripMoment[] => {
      const { index, moment } = error
      const [before, after] = [rests[index] as number, rests[index + 1] as number]
      // Where the weight stays there is nothing to be early or late.
      if (moment === 'leaves' || before === after || !isIn(error.danced)) return []
      return [{ ...error, moment, right: moment === 'full' ? after : (before + after) / 2 }]
    })
    return [
      { panel, points, moments, waits: seen(waits(performance, ideal)), rushes: seen(rushes(performance, ideal)) },
    ]
  })
  return { from: range.from, to: range.to, grid, lines }
}
