import { type Pose, pose } from '../../src/pose/pose.ts'
import type { Check } from './check.mjs'
import { dancedFigure, stepsOf } from './dancedFigure.ts'
import { gsapPoses } from './gsapPoses.ts'
import { blockRatios, interleaved } from './interleaved.mjs'
import { median } from './median.mjs'
import { poseTables } from './poseTables.ts'
import { unrolledPoses } from './unrolledPoses.ts'

const STEPS_A_BEAT = 60
const BLOCKS = 21
/** Passes over the whole figure in a block: enough for the memory that they leave behind to be collected in their own time. */
const PASSES = 40
const PASSES_GSAP = 10
const SAME = 1e-12
/** gsap writes six decimals. */
const GSAP_ROUNDS = 1e-5

/** Places for poses, a power of two of them. */
const room = (places: number): (Pose | null)[] => new Array<Pose | null>(places).fill(null)
/** More than the figure has steps. */
const ALL = 1024

/** @throws unless both lists hold the same poses, to 1e-12 in every number */
function mustAgree(ours: readonly (Pose | null)[], theirs: readonly (Pose | null)[]): void {
  ours.forEach((one, i) => {
    const other = theirs[i]
    if (one === null || other === null || other === undefined) throw new Error(`no pose at step ${i}`)
    const pairs = [
      ...(['left', 'right'] as const).flatMap((foot) =>
        (['x', 'y', 'heading', 'height', 'load', 'onFloor'] as const).map((key) => [
          `${foot}.${key}`,
          Number(one[foot][key]),
          Number(other[foot][key]),
        ]),
      ),
      ...(['x', 'y'] as const).map((key) => [`weight.${key}`, one.weight[key], other.weight[key]]),
    ] as [string, number, number][]
    for (const [name, a, b] of pairs) {
      if (!(Math.abs(a - b) <= SAME)) throw new Error(`step ${i}: ${name} is ${a}, unrolled by hand ${b}`)
    }
  })
}

/**
 * Poses a second of a nine-step figure, at every sixtieth of a beat: against a gsap timeline, and against a loop unrolled
 * by hand for this very figure.
 * @throws when the three do not show the same figure
 */
export function poseRates(): Check[] {
  const danced = dancedFigure(stepsOf(9))
  const { floor, curve } = danced
  const tables = poseTables(danced)
  const timeline = gsapPoses(danced)
  const steps = Math.round((curve.to - curve.from) * STEPS_A_BEAT) + 1
  const step = 1 / STEPS_A_BEAT
  const { from } = curve
  const play = (into: (Pose | null)[]): void => {
    const ring = into.length - 1
    for (let i = 0; i < steps; i++) into[i & ring] = pose(floor, curve.at(from + i * step))
  }
  const unroll = (into: (Pose | null)[]): void => unrolledPoses(tables, from, step, steps, into)
  const tween = (): void => {
    for (let i = 0; i < steps; i++) timeline.at(i * step)
  }
  const [ours, theirs] = [room(ALL), room(ALL)]
  play(ours)
  unroll(theirs)
  mustAgree(ours.slice(0, steps), theirs.slice(0, steps))
  tween()
  const { marker } = timeline.moved
  const last = ours[steps - 1]?.weight
  if (last === undefined || Math.hypot(marker.x - last.x, marker.y - last.y) > GSAP_ROUNDS) {
    throw new Error('the timeline did not bring the marker to where the figure ends')
  }

  // A few are kept, so that no engine may leave out the records.
  const few = room(64)
  const times = (passes: number, way: () => void) => (): void => {
    for (let pass = 0; pass < passes; pass++) way()
  }
  const [oursMs = [], unrolledMs = [], gsapMs = []] = interleaved(
    [times(PASSES, () => play(few)), times(PASSES, () => unroll(few)), times(PASSES_GSAP, tween)],
    BLOCKS,
  )
  const each = (blocks: readonly number[], passes: number): number[] =>
    blocks.map((ms) => (ms * 1000) / (passes * steps))
  const [a, b, c] = [each(oursMs, PASSES), each(unrolledMs, PASSES), each(gsapMs, PASSES_GSAP)]
  return [
    {
      name: 'poses a second, nine steps: ours to a gsap timeline',
      measured: median(blockRatios(c, a)),
      limit: 10,
      bound: 'at least',
      samples: {
        steps,
        'ours, µs a pose': a,
        'gsap, µs a pose': c,
        'ours, median µs': median(a),
        'gsap, median µs': median(c),
      },
    },
    {
      name: 'time of a pose, nine steps: ours to a loop unrolled by hand',
      measured: median(blockRatios(a, b)),
      limit: 2,
      bound: 'at most',
      samples: {
        'ours, µs a pose': a,
        'unrolled, µs a pose': b,
        'unrolled, median µs': median(b),
        'largest difference allowed': SAME,
      },
    },
  ]
}
