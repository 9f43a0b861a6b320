/** A box by its middle and half its size, in pixels. */
export type Box = { readonly x: number; readonly y: number; readonly halfWidth: number; readonly halfHeight: number }

/** Beside first, then aslant, then above and below: where eyes look for a note on a point. */
const DIRECTIONS: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0.85, -0.8],
  [-0.85, -0.8],
  [0.85, 0.8],
  [-0.85, 0.8],
  [0, -1],
  [0, 1],
]
/** What a spot farther off must save, in square pixels. */
const NEARER_SAVES = 60
/** Outside the panel it cannot be read at all. */
const OUTSIDE_COSTS = 4

/**
 * Where a note of the given size goes so that it hides least.
 * @param around the point that it belongs to, and how far from it the note's edge may stay, the best first
 * @param taken boxes not to be covered
 * @param panel half the panel's width and height; its middle is (0, 0)
 * @returns the middle for the note; the first direction that is free, else the one that covers least
 */
export function freeSpot(
  around: { readonly x: number; readonly y: number; readonly reaches: readonly number[] },
  size: { readonly halfWidth: number; readonly halfHeight: number },
  taken: readonly Box[],
  panel: { readonly halfWidth: number; readonly halfHeight: number },
): Box {
  let best: Box | null = null
  let least = Number.POSITIVE_INFINITY
  const tries = around.reaches.flatMap((reach, k) => DIRECTIONS.map(([dx, dy]) => ({ reach, dx, dy, farther: k })))
  for (const { reach, dx, dy, farther } of tries) {
    const spot: Box = {
      x: around.x + dx * (reach + size.halfWidth),
      y: around.y + dy * (reach + size.halfHeight),
      ...size,
    }
    const outX = Math.max(0, Math.abs(spot.x) + size.halfWidth - panel.halfWidth)
    const outY = Math.max(0, Math.abs(spot.y) + size.halfHeight - panel.halfHeight)
    const outside = OUTSIDE_COSTS * (outX * 2 * size.halfHeight + outY * 2 * size.halfWidth)
    const covered = taken.reduce((sum, box) => sum + overlap(spot, box), 0)
    const cost = outside + covered + farther * NEARER_SAVES
    if (cost < least) {
      least = cost
      best = spot
    }
  }
  return best ?? { x: around.x, y: around.y, ...size }
}

function overlap(a: Box, b: Box): number {
  const width = Math.min(a.x + a.halfWidth, b.x + b.halfWidth) - Math.max(a.x - a.halfWidth, b.x - b.halfWidth)
  const height = Math.min(a.y + a.halfHeight, b.y + b.halfHeight) - Math.max(a.y - a.halfHeight, b.y - b.halfHeight)
  return width > 0 && height > 0 ? width * height : 0
}
