import type { Floor } from './floor.ts'
import { FOOT_CUBICS, heightAt } from './footPieces.ts'
import type { Place } from './footPosition.ts'
import { cubicIn, goneIn, moreIn, type Rows, rowAt } from './pieces.ts'
import { carriedRound, type Swing } from './swing.ts'
import { mix, smooth, type Vector } from './vector.ts'

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
  const x = goneIn(values, row, p)
  const onFloor = p <= moreIn(values, row, FOOT_CUBICS, 0)
  const round = moreIn(values, row, FOOT_CUBICS, 1)
  if (round >= 0 && x > 0) {
    const swing = swings[round] as Swing
    const place = roundPivot(swing, p, x)
    return { x: place.x, y: place.y, heading: place.heading, height: heightAt(swing, x), onFloor, load }
  }
  return {
    x: cubicIn(values, row, 0, x),
    y: cubicIn(values, row, 1, x),
    heading: cubicIn(values, row, 2, x),
    height: cubicIn(values, row, 3, x),
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
      x: cubicIn(weight.values, weightRow, 0, gone),
      y: cubicIn(weight.values, weightRow, 1, gone),
    },
  }
}
