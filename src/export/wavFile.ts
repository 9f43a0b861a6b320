import type { Round } from '../sound/renderRound.ts'

const HEADER_BYTES = 44
const BYTES_PER_SAMPLE = 2
/** The sizes in the header have 32 bits, but many readers take them as signed. */
const MOST_BYTES = 2 ** 31
/** What a sample of −1 is in 16 bits; readers divide by it. */
const FULL_SCALE = 2 ** 15

/** To the nearest step, held in the range; NaN stays NaN, which is written as 0. No dither: the same round, the same bytes. */
const sample16 = (sample: number): number =>
  Math.min(FULL_SCALE - 1, Math.max(-FULL_SCALE, Math.round(sample * FULL_SCALE)))

/** RIFF, WAVE, a format chunk of 16 bytes (1 = PCM, one channel), then the data's head. All numbers little-endian. */
function writeHeader(view: DataView, sampleRate: number): void {
  const name = (at: number, text: string) => {
    for (let index = 0; index < 4; index++) view.setUint8(at + index, text.charCodeAt(index))
  }
  name(0, 'RIFF')
  view.setUint32(4, view.byteLength - 8, true)
  name(8, 'WAVE')
  name(12, 'fmt ')
  view.setUint32(16, 16, true)
  view.setUint16(20, 1, true)
  view.setUint16(22, 1, true)
  view.setUint32(24, sampleRate, true)
  view.setUint32(28, sampleRate * BYTES_PER_SAMPLE, true)
  view.setUint16(32, BYTES_PER_SAMPLE, true)
  view.setUint16(34, 8 * BYTES_PER_SAMPLE, true)
  name(36, 'data')
  view.setUint32(40, view.byteLength - HEADER_BYTES, true)
}

/**
 * Rounds one after the other as a WAV file: PCM, 16 bits, mono. A round is a whole number of samples long, so however
 * many there are, none begins late.
 * @param rounds a whole number, 1 or more
 * @throws RangeError on another number of rounds, a sample rate that is no whole number above 0, or more than 2³¹ bytes
 */
export function wavFile({ samples, sampleRate }: Round, rounds: number): Uint8Array<ArrayBuffer> {
  if (!(Number.isInteger(rounds) && rounds >= 1)) {
    throw new RangeError(`rounds must be a whole number of 1 or more, got ${rounds}`)
  }
  // The header's bytes a second have 32 bits.
  if (!(Number.isInteger(sampleRate) && sampleRate >= 1 && sampleRate * BYTES_PER_SAMPLE < 2 ** 32)) {
    throw new RangeError(`a sample rate must be a whole number in [1, 2^31), got ${sampleRate}`)
  }
  const roundBytes = samples.length * BYTES_PER_SAMPLE
  const size = HEADER_BYTES + rounds * roundBytes
  if (size > MOST_BYTES) throw new RangeError(`a WAV file may have ${MOST_BYTES} bytes, this one would have ${size}`)
  const bytes = new Uint8Array(size)
  const view = new DataView(bytes.buffer)
  writeHeader(view, sampleRate)
  for (const [index, sample] of samples.entries()) {
    view.setInt16(HEADER_BYTES + index * BYTES_PER_SAMPLE, sample16(sample), true)
  }
  for (let round = 1; round < rounds; round++) {
    bytes.copyWithin(HEADER_BYTES + round * roundBytes, HEADER_BYTES, HEADER_BYTES + roundBytes)
  }
  return bytes
}
