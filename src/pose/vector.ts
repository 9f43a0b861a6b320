/** Points on the floor, in metres. Floor frame: y along the line of dance (or the dancer's first facing), x to its right. */
export type Vector = { readonly x: number; readonly y: number }

export const add = (a: Vector, b: Vector): Vector => ({ x: a.x + b.x, y: a.y + b.y })
export const subtract = (a: Vector, b: Vector): Vector => ({ x: a.x - b.x, y: a.y - b.y })
export const scale = (a: Vector, by: number): Vector => ({ x: a.x * by, y: a.y * by })
export const mix = (a: Vector, b: Vector, share: number): Vector => ({
  x: a.x + share * (b.x - a.x),
  y: a.y + share * (b.y - a.y),
})
export const length = (a: Vector): number => Math.hypot(a.x, a.y)

/** Turned to the right by `angle` radians. */
export function turn(a: Vector, angle: number): Vector {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
  return { x: a.x * cos + a.y * sin, y: a.y * cos - a.x * sin }
}

/** No corner is taken faster than this times the slower side: the path then never runs ahead of its end and back. */
const CORNER_AT_MOST = 1.5

/**
 * The velocity with which a corner is passed: the mean of before and after where the way goes on, less the sharper it
 * bends back, 0 straight back (so that there is no loop).
 */
export function cornerVelocity(before: Vector, after: Vector): Vector {
  const [a, b] = [length(before), length(after)]
  if (a === 0 || b === 0) return { x: 0, y: 0 }
  const cosine = (before.x * after.x + before.y * after.y) / (a * b)
  const mean = scale(add(before, after), 0.5 * Math.min(1, 1 + cosine))
  const limit = CORNER_AT_MOST * Math.min(a, b)
  const size = length(mean)
  return size > limit ? scale(mean, limit / size) : mean
}

/** From 0 to 1, flat at both ends (smoothstep); held outside [0, 1]. */
export function smooth(x: number): number {
  if (x <= 0) return 0
  if (x >= 1) return 1
  return x * x * (3 - 2 * x)
}
