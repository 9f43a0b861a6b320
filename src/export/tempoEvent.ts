import { metaEvent } from './midiTrack.ts'

const LARGEST = 0xffffff

/**
 * The tempo as a MIDI file says it: microseconds a quarter note in three bytes, to the nearest. The whole file is then
 * played slower or faster by at most half a microsecond a quarter: under a millisecond in a thousand beats.
 * @throws RangeError where three bytes cannot hold it: below 3.5763 quarter notes a minute, or above 120 million
 */
export function tempoEvent(quartersPerMinute: number): number[] {
  const microseconds = Math.round(60_000_000 / quartersPerMinute)
  if (!(microseconds >= 1 && microseconds <= LARGEST)) {
    throw new RangeError(
      `a MIDI tempo must be above 3.5763 quarter notes a minute and at most 120000000, got ${quartersPerMinute}`,
    )
  }
  return metaEvent(0x51, [microseconds >> 16, (microseconds >> 8) & 0xff, microseconds & 0xff])
}
