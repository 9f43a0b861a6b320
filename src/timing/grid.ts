import { type Beat, beat } from '../units.ts'

/** The nearest grid point, counted from beat 0. @param grid ½ or ¼ */
export const nearestGridPoint = (t: number, grid: number): Beat => beat(Math.round(t / grid) * grid)

/** The grid point at or before `t`. */
export const gridPointBefore = (t: number, grid: number): Beat => beat(Math.floor(t / grid + 1e-9) * grid)

/** Every grid point in [from, to]. */
export function gridPoints(from: number, to: number, grid: number): Beat[] {
  const points: Beat[] = []
  for (let k = Math.ceil(from / grid - 1e-9); k * grid <= to + 1e-9; k++) points.push(beat(k * grid))
  return points
}
