import type { Pose } from '../../src/pose/pose.ts'
import type { PoseTables } from './poseTables.ts'

/**
 * The loop that one would write by hand for one figure that is only ever played forwards: each table's place is kept from
 * step to step, every number of the pose is one cubic, and nothing is called. Writes a fresh record for each step, as
 * `pose` does.
 * @param tables of a figure of steps
 * @param from the first time, beats
 * @param step beats from one pose to the next
 * @param into a power of two of places, filled in turn
 */
export function unrolledPoses(
  tables: PoseTables,
  from: number,
  step: number,
  steps: number,
  into: (Pose | null)[],
): void {
  const progress = tables.progress
  const leftFoot = tables.feet.left.pieces
  const leftDown = tables.feet.left.downUntil
  const rightFoot = tables.feet.right.pieces
  const rightDown = tables.feet.right.downUntil
  const loads = tables.load
  const weights = tables.weight
  const ring = into.length - 1
  let k = 0
  let l = 0
  let r = 0
  let c = 0
  let w = 0
  for (let i = 0; i < steps; i++) {
    const t = from + i * step
    while (t >= progress[k]!) k += 7
    const s = (t - progress[k + 1]!) * progress[k + 2]!
    const p = progress[k + 3]! + s * (progress[k + 4]! + s * (progress[k + 5]! + s * progress[k + 6]!))
    while (p >= leftFoot[l]!) l += 19
    const a = (p - leftFoot[l + 1]!) * leftFoot[l + 2]!
    while (p >= rightFoot[r]!) r += 19
    const b = (p - rightFoot[r + 1]!) * rightFoot[r + 2]!
    while (p >= loads[c]!) c += 7
    const d = (p - loads[c + 1]!) * loads[c + 2]!
    const load = loads[c + 3]! + d * (loads[c + 4]! + d * (loads[c + 5]! + d * loads[c + 6]!))
    while (p >= weights[w]!) w += 11
    const e = (p - weights[w + 1]!) * weights[w + 2]!
    into[i & ring] = {
      left: {
        x: leftFoot[l + 3]! + a * (leftFoot[l + 4]! + a * (leftFoot[l + 5]! + a * leftFoot[l + 6]!)),
        y: leftFoot[l + 7]! + a * (leftFoot[l + 8]! + a * (leftFoot[l + 9]! + a * leftFoot[l + 10]!)),
        heading: leftFoot[l + 11]! + a * (leftFoot[l + 12]! + a * (leftFoot[l + 13]! + a * leftFoot[l + 14]!)),
        height: leftFoot[l + 15]! + a * (leftFoot[l + 16]! + a * leftFoot[l + 17]!),
        onFloor: p <= leftDown[l / 19]!,
        load,
      },
      right: {
        x: rightFoot[r + 3]! + b * (rightFoot[r + 4]! + b * (rightFoot[r + 5]! + b * rightFoot[r + 6]!)),
        y: rightFoot[r + 7]! + b * (rightFoot[r + 8]! + b * (rightFoot[r + 9]! + b * rightFoot[r + 10]!)),
        heading: rightFoot[r + 11]! + b * (rightFoot[r + 12]! + b * (rightFoot[r + 13]! + b * rightFoot[r + 14]!)),
        height: rightFoot[r + 15]! + b * (rightFoot[r + 16]! + b * rightFoot[r + 17]!),
        onFloor: p <= rightDown[r / 19]!,
        load: 1 - load,
      },
      weight: {
        x: weights[w + 3]! + e * (weights[w + 4]! + e * (weights[w + 5]! + e * weights[w + 6]!)),
        y: weights[w + 7]! + e * (weights[w + 8]! + e * (weights[w + 9]! + e * weights[w + 10]!)),
      },
    }
  }
}
