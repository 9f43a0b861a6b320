/** The largest number that a MIDI file can hold in this form: four bytes of seven bits. */
export const LARGEST = 0x0fffffff

/**
 * A number as MIDI files write lengths and waits: seven bits a byte, the highest first, the top bit set on all but the last.
 * @throws RangeError unless a whole number in [0, 0FFFFFFF]
 */
export function variableLength(value: number): number[] {
  if (!(Number.isInteger(value) && value >= 0 && value <= LARGEST)) {
    throw new RangeError(`a variable-length number must be a whole number in [0, ${LARGEST}], got ${value}`)
  }
  const bytes = [value & 0x7f]
  for (let rest = value >> 7; rest > 0; rest >>= 7) bytes.unshift((rest & 0x7f) | 0x80)
  return bytes
}
