import type { Foot } from '../figure/figure.ts'

/**
 * A dance shoe seen from above, in units of its length: origin at the middle of its bounds, toe tip at y = +½, heel at
 * y = −½, x to the right. Proportions from ANSUR II (US Army survey 2012, NATICK/TR-15/007, 6,068 people): breadth
 * 0.376, inner ball 0.741 from the heel, heel breadth 0.27 of the length. The shape between those marks is our own.
 */
export type CubicPath = {
  readonly startX: number
  readonly startY: number
  /** Six numbers a segment: first handle, second handle, end (x and y each). The last end is the start. */
  readonly segments: readonly (readonly [number, number, number, number, number, number])[]
}

/** Breadth of the outline's bounds, in foot lengths. */
export const FOOTPRINT_BREADTH = 0.376

/** Where the letter of the foot is written: the middle of the sole, in foot lengths from the origin. */
export const SOLE_MIDDLE_Y = 0.19

const HEEL_FRONT_Y = -0.235
const POINTS_PER_SEGMENT = 12

/** A knot of the right foot's outline: place, direction of travel, and how far its two handles reach. */
type Knot = readonly [x: number, y: number, dirX: number, dirY: number, handleIn: number, handleOut: number]

/** From the heel along the outer side to the toe and back along the inner side; both sides only rise or only fall. */
const RIGHT_FOOT: readonly Knot[] = [
  [0.004, -0.5, 1, 0, 0.076, 0.076],
  [0.138, -0.355, 0, 1, 0.082, 0.085],
  [0.108, -0.12, 0.02, 1, 0.085, 0.1],
  [0.188, 0.155, 0, 1, 0.12, 0.165],
  [-0.045, 0.5, -1, 0, 0.095, 0.055],
  [-0.188, 0.241, 0, -1, 0.15, 0.12],
  [-0.078, -0.1, -0.02, -1, 0.13, 0.085],
  [-0.132, -0.355, 0, -1, 0.085, 0.082],
]

function rightPath(): CubicPath {
  const segments: [number, number, number, number, number, number][] = []
  RIGHT_FOOT.forEach(([x, y, dirX, dirY, , reach], i) => {
    const [endX, endY, endDirX, endDirY, endReach] = RIGHT_FOOT[(i + 1) % RIGHT_FOOT.length] as Knot
    segments.push([
      x + dirX * reach,
      y + dirY * reach,
      endX - endDirX * endReach,
      endY - endDirY * endReach,
      endX,
      endY,
    ])
  })
  const [startX, startY] = RIGHT_FOOT[0] as Knot
  return { startX, startY, segments }
}

/** The outline as one closed smooth path. The left foot is the right one mirrored. */
function footprintPath(foot: Foot): CubicPath {
  const right = rightPath()
  if (foot === 'right') return right
  return {
    startX: -right.startX,
    startY: right.startY,
    segments: right.segments.map(([a, b, c, d, e, f]) => [-a, b, -c, d, -e, f]),
  }
}

function flatten(path: CubicPath): number[] {
  const points: number[] = []
  let [x0, y0] = [path.startX, path.startY]
  for (const [x1, y1, x2, y2, x3, y3] of path.segments) {
    for (let k = 0; k < POINTS_PER_SEGMENT; k++) {
      const t = k / POINTS_PER_SEGMENT
      const s = 1 - t
      points.push(
        s * s * s * x0 + 3 * s * s * t * x1 + 3 * s * t * t * x2 + t * t * t * x3,
        s * s * s * y0 + 3 * s * s * t * y1 + 3 * s * t * t * y2 + t * t * t * y3,
      )
    }
    x0 = x3
    y0 = y3
  }
  return points
}

/** One side of the outline from the heel up to the toe. */
type Side = { readonly xs: readonly number[]; readonly ys: readonly number[] }

function sideOf(points: readonly number[], from: number, to: number): Side {
  const xs: number[] = []
  const ys: number[] = []
  for (let i = from; i !== to + Math.sign(to - from); i += Math.sign(to - from)) {
    const at = (i * 2) % points.length
    xs.push(points[at] as number)
    ys.push(points[at + 1] as number)
  }
  return { xs, ys }
}

function xAt(side: Side, y: number): number {
  const { xs, ys } = side
  let i = 1
  while (i < ys.length - 1 && (ys[i] as number) < y) i++
  const [y0, y1] = [ys[i - 1] as number, ys[i] as number]
  const [x0, x1] = [xs[i - 1] as number, xs[i] as number]
  return y1 === y0 ? x1 : x0 + (x1 - x0) * Math.min(1, Math.max(0, (y - y0) / (y1 - y0)))
}

/** What can be asked of one foot again and again: outline, sides, and the area below each of its levels. */
type Measured = {
  readonly outline: readonly number[]
  readonly outer: Side
  readonly inner: Side
  readonly levels: readonly number[]
  readonly breadths: readonly number[]
  readonly areas: readonly number[]
}

function measure(foot: Foot): Measured {
  const outline = flatten(footprintPath(foot))
  const count = outline.length / 2
  const toe = POINTS_PER_SEGMENT * 4 // the toe tip is the fourth knot after the heel
  const outer = sideOf(outline, 0, toe)
  const inner = sideOf(outline, count, toe)
  const levels = [...outer.ys, ...inner.ys].sort((a, b) => a - b).filter((y, i, all) => i === 0 || y !== all[i - 1])
  const breadths = levels.map((y) => Math.abs(xAt(outer, y) - xAt(inner, y)))
  const areas = [0]
  for (let i = 1; i < levels.length; i++) {
    const height = (levels[i] as number) - (levels[i - 1] as number)
    areas.push((areas[i - 1] as number) + (height * ((breadths[i] as number) + (breadths[i - 1] as number))) / 2)
  }
  return { outline, outer, inner, levels, breadths, areas }
}

const MEASURED: Readonly<Record<Foot, Measured>> = { left: measure('left'), right: measure('right') }

/** Whose outline a foot has: in a mirror the other one's. */
export const shapeOf = (foot: Foot, mirrored: boolean): Foot => (mirrored === (foot === 'left') ? 'right' : 'left')

/** The outline as a polygon: x and y in turn, 96 points, closed by going back to the first. */
export function footprintOutline(foot: Foot): readonly number[] {
  return MEASURED[foot].outline
}

/** The front edge of the heel, from side to side: x and y in turn, five points, a little hollow as heels are. */
export function heelLine(foot: Foot): readonly number[] {
  const { outer, inner } = MEASURED[foot]
  const [from, to] = [xAt(inner, HEEL_FRONT_Y), xAt(outer, HEEL_FRONT_Y)]
  return [0, 0.25, 0.5, 0.75, 1].flatMap((t) => [from + (to - from) * t, HEEL_FRONT_Y - 0.1 * t * (1 - t)])
}

/** The level below which `share` of the area lies; within a level the breadth is linear, so the area is quadratic. */
function levelOf({ levels, breadths, areas }: Measured, share: number): number {
  const wanted = share * (areas[areas.length - 1] as number)
  let i = 1
  while (i < areas.length - 1 && (areas[i] as number) < wanted) i++
  const rest = wanted - (areas[i - 1] as number)
  const height = (levels[i] as number) - (levels[i - 1] as number)
  const breadth = breadths[i - 1] as number
  const slope = ((breadths[i] as number) - breadth) / height
  // The root of breadth·h + slope·h²/2 = rest, in the form that does not cancel when the slope is small.
  const h = (2 * rest) / (breadth + Math.sqrt(Math.max(0, breadth * breadth + 2 * slope * rest)))
  return (levels[i - 1] as number) + Math.min(height, h)
}

/**
 * The part of a foot that is filled when it carries `share` of the weight: heel first, in proportion by area.
 * @param share clamped to 0 … 1; 0 gives no points, 1 the whole outline
 * @returns a polygon, x and y in turn, in foot lengths
 */
export function loadedPart(foot: Foot, share: number): readonly number[] {
  const measured = MEASURED[foot]
  if (!(share > 0)) return []
  if (share >= 1) return measured.outline
  const level = levelOf(measured, share)
  const { outer, inner } = measured
  const points: number[] = []
  for (let i = 0; i < outer.ys.length && (outer.ys[i] as number) < level; i++) {
    points.push(outer.xs[i] as number, outer.ys[i] as number)
  }
  points.push(xAt(outer, level), level, xAt(inner, level), level)
  let last = 0
  while (last < inner.ys.length && (inner.ys[last] as number) < level) last++
  for (let i = last - 1; i > 0; i--) points.push(inner.xs[i] as number, inner.ys[i] as number)
  return points
}
