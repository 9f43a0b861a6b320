import { metaEvent } from './midiTrack.ts'

const CLOCKS_PER_WHOLE = 96
/** Notated 32nds in 24 clocks; other values are for files whose quarter is no quarter. */
const THIRTY_SECONDS = 8

/** The beats of a bar and the note that counts as one: "3/4" is 3 and 4. */
export type Metre = { readonly beats: number; readonly note: number }

/** @throws RangeError unless it is two whole numbers: 1 to 255, and 2, 4, 8, 16 or 32 */
export function readMetre(timeSignature: string): Metre {
  const [, above, below] = /^(\d{1,3})\/(2|4|8|16|32)$/.exec(timeSignature) ?? []
  const metre = { beats: Number(above), note: Number(below) }
  if (!(metre.beats >= 1 && metre.beats <= 255)) {
    throw new RangeError(`a time signature must be like 3/4, got ${timeSignature}`)
  }
  return metre
}

/** The time signature as a MIDI file says it. Its metronome clicks on every beat; in 6/8, 9/8, 12/8 on every third. */
export function metreEvent({ beats, note }: Metre): number[] {
  const clicked = beats > 3 && beats % 3 === 0 ? 3 : 1
  return metaEvent(0x58, [beats, Math.log2(note), (clicked * CLOCKS_PER_WHOLE) / note, THIRTY_SECONDS])
}
