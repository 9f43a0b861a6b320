import { bodyWithFeet } from '../pose/body.ts'
import { layOutFloor } from '../pose/floor.ts'
import { weightSpeeds } from '../pose/weightSpeeds.ts'
import { touchParts } from '../scene/view.ts'
import { type Comparison, type MomentError, momentErrors, rushes, waits } from '../transfer/comparison.ts'
import { type Smoothness, smoothness } from '../transfer/smoothness.ts'
import type { Way } from '../transfer/way.ts'
import type { Seconds } from '../units.ts'
import { performanceWords } from './performanceWords.ts'

/** One moment of an action against the plan. */
export type MeasuredMoment = {
  /** 1-based. */
  readonly action: number
  readonly sign: string
  readonly moment: MomentError['moment']
  /** In beats from the count of the first action. */
  readonly planned: number
  readonly danced: number
  /** How late; early is negative. */
  readonly beats: number
  readonly milliseconds: number
}

/** A time in which the weight waits, or is rushed. */
export type MeasuredStretch = {
  /** In beats from the count of the first action. */
  readonly from: number
  readonly to: number
  /** How long. */
  readonly beats: number
  readonly milliseconds: number
}

/** A performance in numbers. */
export type Measure = {
  readonly way: Way
  readonly says: string
  readonly moments: readonly MeasuredMoment[]
  readonly waits: readonly MeasuredStretch[]
  readonly rushes: readonly MeasuredStretch[]
  /** Of the weight's speed along the floor; null where there is too little movement to tell. */
  readonly smoothness: Smoothness | null
}

/** In hertz: what the measures of smoothness are usually published at. */
const SAMPLES_A_SECOND = 100
const FEWEST_SAMPLES = 4
/** In metres a second: below any movement, above what rounding leaves of a stand. */
const STANDS = 1e-6

function smoothnessOf(comparison: Comparison, panel: number, beatLasts: Seconds): Smoothness | null {
  const { curve, carried } = (comparison.panels[panel] as Comparison['panels'][number]).performance
  const floor = layOutFloor(comparison.schedule.figure, carried, touchParts(comparison), bodyWithFeet(1))
  const speeds = weightSpeeds(floor, curve, beatLasts, SAMPLES_A_SECOND)
  const moves = speeds.length >= FEWEST_SAMPLES && speeds.some((speed) => speed > STANDS)
  return moves ? smoothness(speeds, SAMPLES_A_SECOND) : null
}

/**
 * Measures one performance against the plan.
 * @param panel index into the comparison's panels
 * @param beatLasts at the tempo it is danced at
 */
export function measureOf(comparison: Comparison, panel: number, beatLasts: Seconds): Measure {
  const { schedule, ideal } = comparison
  const { way, performance } = comparison.panels[panel] as Comparison['panels'][number]
  const milliseconds = (beats: number): number => beats * beatLasts * 1000
  const stretch = ({ from, to }: { readonly from: number; readonly to: number }): MeasuredStretch => ({
    ...{ from, to, beats: to - from, milliseconds: milliseconds(to - from) },
  })
  return {
    way,
    says: performanceWords(comparison, panel),
    moments: momentErrors(performance, ideal).map(({ index, moment, planned, danced, by }) => ({
      ...{ action: index + 1, sign: schedule.actions[index]?.sign ?? '' },
      ...{ moment, planned, danced, beats: by, milliseconds: milliseconds(by) },
    })),
    waits: waits(performance, ideal).map(stretch),
    rushes: rushes(performance, ideal).map(stretch),
    smoothness: smoothnessOf(comparison, panel, beatLasts),
  }
}
