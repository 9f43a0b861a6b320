import { bodyWithFeet } from '../pose/body.ts'
import { layOutFloor } from '../pose/floor.ts'
import { type FootPose, pose } from '../pose/pose.ts'
import { type Track, trackAt, trackOf } from '../pose/track.ts'
import { touchParts } from '../scene/view.ts'
import { musicPlace, partSign } from '../timing/counts.ts'
import { gridPoints } from '../timing/grid.ts'
import { schedule as scheduleOf } from '../timing/schedule.ts'
import { actingFeet } from '../transfer/actingFeet.ts'
import type { Comparison } from '../transfer/comparison.ts'
import { perform } from '../transfer/perform.ts'
import { actionWords } from './actionWords.ts'
import { stageWords } from './stageWords.ts'

const DEGREES = 180 / Math.PI

export type ChartFoot = {
  /** Metres on the floor: x to the right of the line of dance (or of the first facing), y along it. */
  readonly x: number
  readonly y: number
  /** Degrees from y, to the right positive; whole turns are kept. */
  readonly heading: number
  /** Share of the weight, 0 to 1. */
  readonly load: number
  readonly onFloor: boolean
}

/** A performance at one grid point. */
export type ChartRow = {
  /** From the first action's count. */
  readonly beat: number
  readonly bar: number
  /** "1", "&", "a"; "·" on a first quarter, for which the trade has no word. */
  readonly count: string
  /** 1-based number of the action under way, or just done. */
  readonly action: number
  readonly sign: string
  /** The action as a chart has it. */
  readonly says: string
  /** Actions done. */
  readonly progress: number
  readonly stage: string
  readonly left: ChartFoot
  readonly right: ChartFoot
  readonly weight: { readonly x: number; readonly y: number }
  /** The tracks that the figure has: degrees since the start; 0 down to 1 up; −1 left to 1 right. */
  readonly bodyTurn?: number
  readonly rise?: number
  readonly sway?: number
}

const footOf = ({ x, y, heading, load, onFloor }: FootPose): ChartFoot => ({
  ...{ x, y, heading: heading * DEGREES, load, onFloor },
})

/**
 * One performance as rows, a row for each grid point from the one at or before its first leave to the one at or after
 * its last full.
 * @param panel index into the comparison's panels
 * @param every distance of the rows in beats: ½, ¼ or ⅛
 */
export function chartRows(comparison: Comparison, panel: number, every: number): readonly ChartRow[] {
  const { schedule } = comparison
  const { figure } = schedule
  const { performance } = comparison.panels[panel] as Comparison['panels'][number]
  const { curve, carried } = performance
  const floor = layOutFloor(figure, carried, touchParts(comparison), bodyWithFeet(1))
  const feet = actingFeet(figure, carried)
  // The tracks are written under the figure's first timing, whichever is danced.
  const first = perform(scheduleOf(figure), { kind: 'in time' }).curve
  const { bodyTurn, rise, sway } = figure.tracks
  const [turns, rises, sways] = [bodyTurn, rise, sway].map((track) => trackOf(track, first))
  const reached = (key: string, track: Track | null | undefined, p: number, scale = 1) =>
    track === null || track === undefined ? {} : { [key]: trackAt(track, p) * scale }

  const from = Math.floor(curve.from / every + 1e-9) * every
  const to = Math.ceil(curve.to / every - 1e-9) * every
  return gridPoints(from, to, every).map((t): ChartRow => {
    const p = curve.at(t)
    const index = Math.min(figure.actions.length - 1, Math.max(0, Math.ceil(p - 1e-9) - 1))
    const scheduled = schedule.actions[index] as (typeof schedule.actions)[number]
    const now = pose(floor, p)
    const place = musicPlace(schedule, t)
    return {
      beat: t,
      bar: place.bar,
      count: partSign(place.part) || String(place.count),
      action: index + 1,
      sign: scheduled.sign,
      says: actionWords(scheduled.action, feet[index] as (typeof feet)[number]),
      progress: p,
      stage: stageWords(comparison, panel, t),
      left: footOf(now.left),
      right: footOf(now.right),
      weight: now.weight,
      ...reached('bodyTurn', turns, p, DEGREES),
      ...reached('rise', rises, p),
      ...reached('sway', sways, p),
    }
  })
}
