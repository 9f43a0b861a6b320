import type { Floor } from './floor.ts'
import { FOOT, FOOT_MORE, heightAt } from './footPieces.ts'
import type { Place } from './footPosition.ts'
import { cubicIn, goneIn, moreIn, type Rows, rowAt } from './pieces.ts'
import { carriedRound, type Swing } from './swing.ts'
import { mix, smooth, type Vector } from './vector.ts'
import { WEIGHT } from './weightPieces.ts'

export type FootPose = Place & {
  /** Metres above the floor. */
  readonly height: number
  readonly onFloor: boolean
  /** Share of the weight on it, 0 to 1; the two feet's add up to 1. */
  readonly load: number
}

/** A dancer at one moment, on the floor: metres and radians. */
export type Pose = { readonly left: FootPose; readonly right: FootPose; readonly weight: Vector }

/** A foot that a pivot carries round. As one who turns sees it, it stands, then goes to its place; the turn carries all of it. */
function roundPivot({ from, to, start, end, round }: Swing, p: number, done: number): Place {
  if (round === null) return end
  const { centre, by, until, departs } = round
  const before = carriedRound(end, centre, -by)
  const own = departs < to ? smooth((p - departs) / (to - departs)) : smooth(done)
  const seen = { ...mix(start, before, own), heading: start.heading + own * (before.heading - start.heading) }
  return carriedRound(seen, centre, by * smooth((p - from) / (until - from)))
}

function footAt(rows: Rows, swings: readonly Swing[], index: number, p: number, load: number): FootPose {
  const { values } = rows
  const row = rowAt(rows, index, p)
  const gone = goneIn(values, row, p)
  const onFloor = p <= moreIn(values, row, FOOT.cubics, FOOT_MORE.downUntil)
  const round = moreIn(values, row, FOOT.cubics, FOOT_MORE.roundSwing)
  if (round >= 0 && gone > 0) {
    const swing = swings[round] as Swing
    const { x, y, heading } = roundPivot(swing, p, gone)
    return { x, y, heading, height: heightAt(swing, gone), onFloor, load }
  }
  return {
    x: cubicIn(values, row, FOOT.x, gone),
    y: cubicIn(values, row, FOOT.y, gone),
    heading: cubicIn(values, row, FOOT.heading, gone),
    height: cubicIn(values, row, FOOT.height, gone),
    onFloor,
    load,
  }
}

/**
 * The dancer at progress `p` (actions done; held at 0 and at the end). Pure: the same answer in any order, and as quickly
 * in a figure of ten thousand actions as in one of ten.
 * @param floor from `layOutFloor`, at least one action
 */
export function pose({ paths, swings, actions }: Floor, p: number): Pose {
  const n = actions.length
  const done = Math.min(n, Math.max(0, p))
  const index = done < n ? Math.floor(done) : n - 1
  const { left, right, load, weight } = paths
  const loadRow = rowAt(load, index, done)
  const onLeft = cubicIn(load.values, loadRow, 0, goneIn(load.values, loadRow, done))
  const weightRow = rowAt(weight, index, done)
  const gone = goneIn(weight.values, weightRow, done)
  return {
    left: footAt(left, swings.left, index, done, onLeft),
    right: footAt(right, swings.right, index, done, 1 - onLeft),
    weight: {
      x: cubicIn(weight.values, weightRow, WEIGHT.x, gone),
      y: cubicIn(weight.values, weightRow, WEIGHT.y, gone),
    },
  }
}
