import { ownSide } from '../pose/footPosition.ts'
import { turn } from '../pose/vector.ts'
import type { Schedule } from '../timing/schedule.ts'
import { MARKER_REACH } from './markerOutline.ts'
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

/** What the lines have to keep clear of, all in view metres. */
export type LabelRoom = {
  readonly footLength: number
  readonly footBreadth: number
  readonly textHeight: number
  /** Half the panel. */
  readonly halfWidth: number
  readonly halfHeight: number
  /** Whether its arrow stands in the upper right corner. */
  readonly lineOfDance: boolean
  /** A foot's own side lies on the other side of it. */
  readonly mirrored: boolean
  /** The whole path of the weight, x and y in turn. */
  readonly path: Float64Array
}

/** A line's height, in text heights. */
const LINE_HEIGHT = 1.35
/** From the foot's edge to the line, in text heights. */
const GAP = 0.35
/** Lines beside each other are further apart than this, in half widths, or two would read as one. */
const APART = 1.2
/** What stands in the panel's right-hand corners, about, in text heights: the scale bar, and above the line of dance. */
const SCALE_BAR = { width: 7, height: 2.2 } as const
const ARROW = { width: 2.6, height: 3 } as const

/** About half the width of a line (number, gap, and a count such as "Q" or "4-1"), in text heights. */
export const labelHalfWidth = (count: string): number => 1.2 + 0.28 * Math.max(0, count.length - 1)

/** Whether a line reaches into a corner. @param right its right end @param out its end towards the corner, from the middle */
const inCorner = (
  { width, height }: { readonly width: number; readonly height: number },
  right: number,
  out: number,
  { halfWidth, halfHeight, textHeight }: LabelRoom,
): boolean => right > halfWidth - width * textHeight && out > halfHeight - height * textHeight

/** Places all round a foot that are tried after the usual ones. */
const RING = 16
/** A line that is read as another foot's is worse than one on the weight's path, and better than one on a foot. */
const MISTAKEN = 1.5
/** From this on a line would lie on another one, or outside the panel. */
const UNREADABLE = 4

/** How bad a place is: outside the panel, on another line, on a foot, on the weight's path. */
function clutter(
  x: number,
  y: number,
  count: string,
  own: Placement,
  feet: readonly Placement[],
  labels: readonly PlacementLabel[],
  room: LabelRoom,
): number {
  const [halfWidth, halfHeight] = [labelHalfWidth(count) * room.textHeight, (LINE_HEIGHT / 2) * room.textHeight]
  const within = (px: number, py: number, beyondX: number, beyondY: number): boolean =>
    Math.abs(px - x) < halfWidth + beyondX && Math.abs(py - y) < halfHeight + beyondY
  let bad = 0
  if (Math.abs(x) + halfWidth > room.halfWidth || Math.abs(y) + halfHeight > room.halfHeight) bad += 8
  if (labels.some((other) => within(other.x, other.y, halfWidth * APART, halfHeight * 0.95))) bad += 4
  if (inCorner(SCALE_BAR, x + halfWidth, -y + halfHeight, room)) bad += 4
  if (room.lineOfDance && inCorner(ARROW, x + halfWidth, y + halfHeight, room)) bad += 4
  if (feet.some((foot) => foot !== own && within(foot.x, foot.y, room.footBreadth / 3, room.footLength / 3))) bad += 2
  for (let k = 0; k < room.path.length; k += 2) {
    if (within(room.path[k] as number, room.path[k + 1] as number, 0, 0)) return bad + 1
  }
  return bad
}

/** How far a point is from a foot, from the line between its heel and toes. */
function offFoot({ x, y, heading }: Placement, at: { readonly x: number; readonly y: number }, length: number): number {
  const from = turn({ x: at.x - x, y: at.y - y }, -heading)
  return Math.hypot(from.x, Math.max(0, Math.abs(from.y) - length / 2))
}

/** Whether a place is no nearer to the foot it belongs to than to one elsewhere: then it is read as that one's. */
function isMistaken(
  at: { readonly x: number; readonly y: number },
  own: Placement,
  feet: readonly Placement[],
  length: number,
) {
  const off = offFoot(own, at, length)
  return feet.some((foot) => !near(foot, own, SAME_SPOT) && offFoot(foot, at, length) < off)
}

/**
 * Number and count beside where each action's foot comes to stand: on the foot's own side if that is clear, else ahead of
 * its toes or behind its heel, and line under line where one spot is used more than once.
 * @param placements one an action, in order; null for an action that leaves the feet where they are
 */
export function placementLabels(
  placements: readonly (Placement | null)[],
  { actions }: Schedule,
  room: LabelRoom,
): PlacementLabel[] {
  const { textHeight, footBreadth, footLength } = room
  const feet = placements.filter((placement) => placement !== null)
  const labels: PlacementLabel[] = []
  for (const [index, placement] of placements.entries()) {
    if (placement === null) continue
    const side = ownSide(placement.foot) * (room.mirrored ? -1 : 1)
    const count = actions[index]?.sign ?? ''
    // A line is wider than high: how far off it stands depends on which of the two lies towards the foot.
    const reach = (towards: { x: number; y: number }): number => {
      const { x, y } = turn(towards, placement.heading)
      return (Math.abs(x) * labelHalfWidth(count) + (Math.abs(y) * LINE_HEIGHT) / 2) * textHeight
    }
    const across = reach({ x: 1, y: 0 })
    const beside = footBreadth / 2 + GAP * textHeight + across
    const clear = MARKER_REACH * footLength + (GAP / 2) * textHeight + across
    const beyond = footLength / 2 + (GAP / 3) * textHeight + reach({ x: 0, y: 1 })
    const places = [
      // Clear of the marker when it stands over this foot, where there is room for that.
      { x: side * clear, y: 0 },
      { x: side * beside, y: 0 },
      { x: 0, y: beyond },
      { x: 0, y: -beyond },
      { x: side * beside, y: -LINE_HEIGHT * textHeight },
      { x: side * beside, y: LINE_HEIGHT * textHeight },
      { x: side * beside, y: -2 * LINE_HEIGHT * textHeight },
      { x: side * beside, y: 2 * LINE_HEIGHT * textHeight },
      { x: side * clear, y: -LINE_HEIGHT * textHeight },
      { x: side * clear, y: LINE_HEIGHT * textHeight },
    ].map((offset) => {
      const out = turn(offset, placement.heading)
      return { x: placement.x + out.x, y: placement.y + out.y }
    })
    for (let k = 0; k < RING; k++) {
      const angle = (2 * Math.PI * k) / RING
      const towards = { x: side * Math.cos(angle), y: Math.sin(angle) }
      const foot = (Math.abs(towards.x) * footBreadth + Math.abs(towards.y) * footLength) / 2
      const off = foot + GAP * textHeight + reach(towards)
      const out = turn({ x: towards.x * off, y: towards.y * off }, placement.heading)
      places.push({ x: placement.x + out.x, y: placement.y + out.y })
    }
    const bad = places.map(
      (place) =>
        clutter(place.x, place.y, count, placement, feet, labels, room) +
        (isMistaken(place, placement, feet, footLength) ? MISTAKEN : 0),
    )
    const least = Math.min(...bad)
    // A heap of numbers says less than a gap in the row.
    if (least >= UNREADABLE) continue
    const best = places[bad.indexOf(least)] as { x: number; y: number }
    labels.push({ ...best, number: String((actions[index]?.written ?? index) + 1), count })
  }
  return labels
}
