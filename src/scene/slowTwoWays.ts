import type { Convention, Dance } from '../dance/dance.ts'
import { freeExercise } from '../dance/freeExercise.ts'
import type { Foot } from '../figure/figure.ts'
import { walkingFigure } from '../figure/walkingFigure.ts'
import { bodyWithFeet } from '../pose/body.ts'
import { layOutFloor } from '../pose/floor.ts'
import type { Place } from '../pose/footPosition.ts'
import { pose } from '../pose/pose.ts'
import type { Vector } from '../pose/vector.ts'
import { gridPoints } from '../timing/grid.ts'
import { schedule as scheduleOf } from '../timing/schedule.ts'
import { waits } from '../transfer/comparison.ts'
import { perform } from '../transfer/perform.ts'
import type { Way } from '../transfer/way.ts'
import { type BeatValue, type Metres, metres, type Seconds } from '../units.ts'
import { touchParts } from './view.ts'

/** A quick, the same step with a slow's time and length, and the quick's own length with a slow's time. */
type StepName = 'quick' | 'larger' | 'slower'

/** One step forward from closed feet, as the weight travels in it. Floor frame: metres, y ahead. */
export type TravelledStep = {
  readonly name: StepName
  /** How far the weight goes ahead, from when it leaves until it is full. */
  readonly length: number
  /** From when it leaves until it is full, beats. */
  readonly beats: number
  /** The mean, metres a second. */
  readonly speed: number
  /** As a part of the quick's speed: 1 = the same. */
  readonly ofQuick: number
  /** Beats in which the weight stands, of the step's own time: until the next step leaves. */
  readonly still: number
  /** Longer than the plan has it rest, in beats. */
  readonly waits: number
  /** Where the feet are: the one with the weight, and the other before and after. */
  readonly feet: { readonly standing: Standing; readonly from: Standing; readonly to: Standing }
  readonly footLength: number
  /** The weight's way, from when it leaves until it is full: a point each sixteenth of a beat. */
  readonly path: readonly Vector[]
  /** Where the weight is at each half beat of it, first and last included. */
  readonly beads: readonly (Vector & { readonly onCount: boolean })[]
}

type Standing = Place & { readonly foot: Foot }

export type SlowTwoWays = {
  /** The dance in which they are shown: the one asked for, or the free exercise. */
  readonly dance: Dance
  /** Why it is not the one asked for; null: it is. */
  readonly instead: 'no slows' | 'struck' | null
  /** A slow's time as quicks. */
  readonly ratio: number
  readonly steps: readonly TravelledStep[]
}

/**
 * A quick of a size of which twice can still be walked: fast walking steps of young adults are 1.05 of the leg, more than
 * 0.9 m (J. NeuroEng. Rehabil. 9:69, 2012, Table 1); the size itself is own judgement.
 */
const QUICK_SIZE = metres(0.4)
const HALF = 0.5
const PATH_GRID = 1 / 16
/** Stands, the step, and one more after it: a wait is seen only where something follows. */
const STEP = 1

type Wanted = { readonly name: StepName; readonly sign: string; readonly value: BeatValue; readonly size: Metres }
type Measured = Omit<TravelledStep, 'ofQuick'>

/**
 * One step, measured.
 * @param perBeat seconds a beat
 */
function travelled(
  dance: Dance,
  convention: Convention,
  { name, sign, value, size }: Wanted,
  perBeat: Seconds,
  way: Way,
): Measured {
  const figure = walkingFigure(dance, convention, [
    { direction: 'hold', size: null, sign, value },
    { direction: 'forward', size, sign, value },
    { direction: 'forward', size, sign, value },
  ])
  const schedule = scheduleOf(figure)
  const performance = perform(schedule, way)
  const { curve, carried } = performance
  const body = bodyWithFeet(1)
  const floor = layOutFloor(figure, carried, touchParts({ schedule }), body)
  const { foot, place, standing } = floor.actions[STEP] as (typeof floor.actions)[number]
  const [leaves, full, next] = [curve.departs(STEP), curve.arrives(STEP + 1), curve.departs(STEP + 1)]
  const weightAt = (t: number): Vector => pose(floor, curve.at(t)).weight
  const [begins, ends] = [weightAt(leaves), weightAt(full)]
  const length = ends.y - begins.y
  const stands = performance.times[STEP]?.stands
  return {
    name,
    length,
    beats: full - leaves,
    speed: length / ((full - leaves) * perBeat),
    still: next - full + (stands === undefined ? 0 : stands.to - stands.from),
    waits: waits(performance, perform(schedule, { kind: 'in time' })).reduce((sum, { from, to }) => sum + to - from, 0),
    feet: {
      standing: { ...standing, foot: foot === 'left' ? 'right' : 'left' },
      from: { ...floor.start[foot], foot },
      to: { ...place, foot },
    },
    footLength: body.footLength,
    path: gridPoints(leaves, full, PATH_GRID).map(weightAt),
    beads: gridPoints(leaves, full, HALF).map((t) => ({ ...weightAt(t), onCount: Number.isInteger(t) })),
  }
}

/** Where a slow can be filled at all: a dance that has slows, and steps that take their whole time. */
function shownIn(dance: Dance, convention: Convention): Pick<SlowTwoWays, 'dance' | 'instead'> {
  if (dance.signs.S === null || dance.signs.Q === null) return { dance: freeExercise, instead: 'no slows' }
  return convention === 'struck' ? { dance: freeExercise, instead: 'struck' } : { dance, instead: null }
}

/**
 * The two ways to fill a slow, beside a quick: the step as much larger as the time is longer, or the same size slower.
 * @param convention the figure's
 * @param perBeat seconds a beat at the tempo at hand
 * @param way how they are danced; a fault shows what it does to the measures
 */
export function slowTwoWays(
  asked: Dance,
  convention: Convention,
  perBeat: Seconds,
  way: Way = { kind: 'in time' },
): SlowTwoWays {
  const { dance, instead } = shownIn(asked, convention)
  const [S, Q] = [dance.signs.S, dance.signs.Q] as [BeatValue, BeatValue]
  const ratio = S / Q
  const wanted: readonly Wanted[] = [
    { name: 'quick', sign: 'Q', value: Q, size: QUICK_SIZE },
    { name: 'larger', sign: 'S', value: S, size: metres(ratio * QUICK_SIZE) },
    { name: 'slower', sign: 'S', value: S, size: QUICK_SIZE },
  ]
  const own = instead === null ? convention : dance.convention
  const measured = wanted.map((one) => travelled(dance, own, one, perBeat, way))
  const quick = measured[0]?.speed ?? Number.NaN
  return { dance, instead, ratio, steps: measured.map((step) => ({ ...step, ofQuick: step.speed / quick })) }
}
