import { beatValue } from '../units.ts'
import { countParts } from './readMoments.ts'

/**
 * A time as its bar (that of count 1: 1) and the count in it: "2", "2 &", "2 a".
 * @param time in 1/48 beat from count 1 of the first bar
 * @throws RangeError when no count lies there
 */
export function countText(time: number, beatsPerBar: number): { readonly bar: number; readonly count: string } {
  const beat: number = beatValue(1)
  const whole = Math.floor(time / beat)
  const part = Object.keys(countParts).find((sign) => countParts[sign] === time - whole * beat)
  if (part === undefined) throw new RangeError(`no count says ${time}/${beat} beat`)
  const bar = Math.floor(whole / beatsPerBar)
  return { bar: bar + 1, count: `${whole - bar * beatsPerBar + 1} ${part}`.trimEnd() }
}
