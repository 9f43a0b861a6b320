import type { Tone } from './panelPicture.ts'

/**
 * The weight marker's middle line: a circle in time, a square late, a diamond early, a triangle for other faults, a circle where
 * names are off.
 * Open, and wide enough to read the foot through it. Lengths are in foot lengths, y upwards, its place at (0, 0).
 */
const MARKER_RADIUS = 0.38

/** How far the marker reaches from its place, stroke included: labels keep clear of this. */
export const MARKER_REACH = 0.62

/** Half a side of the square and half a diagonal of the diamond that look as large as a circle of radius 1. */
const SQUARE = 0.89
const DIAMOND = 1.22
/** The triangle's corners from its middle, likewise. */
const TRIANGLE = 1.42
const CIRCLE_POINTS = 72

/** @returns a closed polygon, x and y in turn */
export function markerOutline(tone: Tone): readonly number[] {
  if (tone === 'late') {
    const half = MARKER_RADIUS * SQUARE
    return [-half, -half, half, -half, half, half, -half, half]
  }
  if (tone === 'early') {
    const half = MARKER_RADIUS * DIAMOND
    return [0, -half, half, 0, 0, half, -half, 0]
  }
  if (tone === 'other') {
    const reach = MARKER_RADIUS * TRIANGLE
    const across = (reach * Math.sqrt(3)) / 2
    return [-across, -reach / 2, across, -reach / 2, 0, reach]
  }
  return markerCircle()
}

/** The shape of the in-time marker, and of the ghost in every panel. */
export function markerCircle(): readonly number[] {
  const points: number[] = []
  for (let k = 0; k < CIRCLE_POINTS; k++) {
    const angle = (k / CIRCLE_POINTS) * 2 * Math.PI
    points.push(MARKER_RADIUS * Math.sin(angle), MARKER_RADIUS * Math.cos(angle))
  }
  return points
}
