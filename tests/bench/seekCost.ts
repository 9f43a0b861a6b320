import { type Pose, pose } from '../../src/pose/pose.ts'
import type { Check } from './check.mjs'
import { type Danced, dancedFigure, stepsOf } from './dancedFigure.ts'
import { blockRatios, interleaved } from './interleaved.mjs'
import { median } from './median.mjs'

const SHORT = 10
const LONG = 10_000
const SEEKS = 200
/** Rounds of the same seeks in a block. */
const ROUNDS = 25
const BLOCKS = 31

/** Numbers from 0 to 1, the same in every run (linear congruences with the constants of Numerical Recipes). */
function randomShares(count: number): Float64Array {
  let state = 20261125
  return Float64Array.from({ length: count }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  })
}

/**
 * A block of random seeks.
 * @param warm the same seeks in every block, so that what they need stands ready in the processor's cache; else others
 */
function seeks({ floor, curve }: Danced, warm: boolean): () => void {
  const shares = randomShares(warm ? SEEKS : SEEKS * ROUNDS * (BLOCKS + 1))
  const times = shares.map((share) => curve.from + share * (curve.to - curve.from))
  // A few are kept, so that no engine may leave out the records.
  const kept = new Array<Pose | null>(64).fill(null)
  let next = 0
  return () => {
    for (let k = 0; k < SEEKS * ROUNDS; k++) {
      kept[k & 63] = pose(floor, curve.at(times[next] as number))
      next = next + 1 === times.length ? 0 : next + 1
    }
  }
}

/**
 * The time of a random seek's pose in a figure of 10,000 actions against one of 10: does finding the place grow with the
 * figure? Both warmed up. Told besides: seeks never made before, which in the long one wait for the memory, ten megabytes
 * of it, whatever the way of finding.
 */
export function seekCost(): Check {
  const [short, long] = [dancedFigure(stepsOf(SHORT)), dancedFigure(stepsOf(LONG))]
  const ways = [seeks(short, true), seeks(long, true), seeks(short, false), seeks(long, false)]
  const [shortUs = [], longUs = [], coldShort = [], coldLong = []] = interleaved(ways, BLOCKS).map((blocks) =>
    blocks.map((ms) => (ms * 1000) / (SEEKS * ROUNDS)),
  )
  return {
    name: `a random seek in ${LONG} actions to one in ${SHORT}`,
    measured: median(blockRatios(longUs, shortUs)),
    limit: 1.5,
    bound: 'at most',
    samples: {
      [`µs a seek in ${SHORT}`]: shortUs,
      [`µs a seek in ${LONG}`]: longUs,
      'short, median µs': median(shortUs),
      'long, median µs': median(longUs),
      'never made before, short, median µs': median(coldShort),
      'never made before, long, median µs': median(coldLong),
    },
  }
}
