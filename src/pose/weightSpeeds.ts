import type { Curve } from '../transfer/curve.ts'
import type { Seconds } from '../units.ts'
import type { Floor } from './floor.ts'
import { pose } from './pose.ts'

/** Half of the time over which a speed is taken, in seconds: short beside any movement, long beside rounding. */
const HALF_SPAN = 0.0005

/**
 * How fast the weight goes along the floor, in metres a second: at the first leave, then at equal distances in time, and
 * on until it stands at the end.
 * @param samplesASecond in hertz
 */
export function weightSpeeds(floor: Floor, curve: Curve, beatLasts: Seconds, samplesASecond: number): Float64Array {
  const lasts = (curve.to - curve.from) * beatLasts
  const weightAt = (second: number) => pose(floor, curve.at(curve.from + second / beatLasts)).weight
  return Float64Array.from({ length: Math.ceil(lasts * samplesASecond - 1e-9) + 1 }, (_, k) => {
    const second = k / samplesASecond
    const [before, after] = [weightAt(second - HALF_SPAN), weightAt(second + HALF_SPAN)]
    return Math.hypot(after.x - before.x, after.y - before.y) / (2 * HALF_SPAN)
  })
}
