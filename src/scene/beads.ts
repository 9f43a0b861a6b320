import type { Floor } from '../pose/floor.ts'
import { pose } from '../pose/pose.ts'
import { gridPoints } from '../timing/grid.ts'
import { type Comparison, waits } from '../transfer/comparison.ts'
import type { Performance } from '../transfer/performance.ts'
import type { Bead } from './panelPicture.ts'
import { inView, type View } from './view.ts'

/** Beads nearer than this, metres, lie on one spot. */
const SAME_SPOT = 0.01
const HALF = 0.5

/** Length of the part of [from, to] in which the weight waits, in beats. */
function waited(found: readonly { from: number; to: number }[], from: number, to: number): number {
  return found.reduce((sum, wait) => sum + Math.max(0, Math.min(to, wait.to) - Math.max(from, wait.from)), 0)
}

/**
 * One bead for each grid point of the range. `marks`: with ticks where the plan is, and waits marked.
 */
export function beadRow(
  { schedule, ideal }: Comparison,
  performance: Performance,
  floor: Floor,
  view: View,
  range: { from: number; to: number },
  marks: boolean,
): readonly Bead[] {
  const times = gridPoints(range.from, range.to, schedule.grid)
  const standing = waits(performance, ideal)
  let since = 0
  const all: Bead[] = []
  for (const [k, t] of times.entries()) {
    const { x, y } = inView(view, pose(floor, performance.curve.at(t)).weight)
    const first = all[since]
    if (first === undefined || Math.hypot(first.x - x, first.y - y) > SAME_SPOT) since = k
    const halves = Math.round(waited(standing, times[since] as number, t) / HALF)
    all.push({
      x,
      y,
      onCount: Number.isInteger(t),
      tick: marks ? inView(view, pose(view.idealFloor, ideal.curve.at(t)).weight) : null,
      waited: marks && halves > 0 ? String(halves) : '',
    })
  }
  return all
}
