import { ownSide } from '../pose/footPosition.ts'
import { turn } from '../pose/vector.ts'
import type { Schedule } from '../timing/schedule.ts'
import type { Placement, PlacementLabel } from './panelPicture.ts'

/** Placements nearer than this, metres, are one spot. */
const SAME_SPOT = 0.05

const near = (a: { x: number; y: number }, b: { x: number; y: number }, within: number): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) < within

/** Each spot once, however often a foot comes to stand there. */
export function distinctPlacements(all: readonly Placement[]): Placement[] {
  const kept: Placement[] = []
  for (const placement of all) {
    const known = kept.some(
      (other) =>
        other.foot === placement.foot &&
        near(other, placement, SAME_SPOT) &&
        Math.abs(other.heading - placement.heading) < 0.02,
    )
    if (!known) kept.push(placement)
  }
  return kept
}

/**
 * Number and count beside where each action's foot comes to stand, on the foot's own side; what is said of one spot more
 * than once is written line under line, and no two lines lie on each other.
 * @param placements one an action, in order; null for an action that leaves the feet where they are
 * @param breadth of the drawn foot, metres
 * @param textHeight metres
 */
export function placementLabels(
  placements: readonly (Placement | null)[],
  { actions }: Schedule,
  breadth: number,
  textHeight: number,
): PlacementLabel[] {
  const labels: PlacementLabel[] = []
  for (const [index, placement] of placements.entries()) {
    if (placement === null) continue
    const side = ownSide(placement.foot)
    const out = turn({ x: side * (breadth / 2 + 1.55 * textHeight), y: 0 }, placement.heading)
    let [x, y] = [placement.x + out.x, placement.y + out.y]
    const lineHeight = 1.35 * textHeight
    while (
      labels.some((other) => Math.abs(other.x - x) < 2.4 * textHeight && Math.abs(other.y - y) < lineHeight * 0.99)
    )
      y -= lineHeight
    labels.push({ x, y, number: String(index + 1), count: actions[index]?.sign ?? '' })
  }
  return labels
}
