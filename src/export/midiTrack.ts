import { variableLength } from './variableLength.ts'

export type MidiEvent = {
  /** MIDI ticks from the file's start, a whole number. */
  readonly at: number
  /** The event itself, without the wait before it. */
  readonly bytes: readonly number[]
}

/** A meta event: FF, its type, its length, its bytes. */
export const metaEvent = (type: number, bytes: ArrayLike<number>): number[] => [
  0xff,
  type,
  ...variableLength(bytes.length),
  ...Array.from(bytes),
]

/** A number in two or four bytes, the highest first. */
const bigEndian = (value: number, bytes: 2 | 4): number[] =>
  Array.from({ length: bytes }, (_, index) => Math.floor(value / 256 ** (bytes - 1 - index)) % 256)

/** A chunk's head: four letters and how many bytes follow. */
const chunkHead = (name: string, length: number): number[] => [
  ...Array.from(name, (letter) => letter.charCodeAt(0)),
  ...bigEndian(length, 4),
]

/**
 * A Standard MIDI File of format 0 (one track).
 * @param ticksPerQuarter 1 to 32767
 * @param events in the order of their times
 * @param end where the track ends, in MIDI ticks; not before the last event
 * @throws RangeError on an event that comes before its predecessor, or more than 0FFFFFFF ticks after it
 */
export function midiTrack(ticksPerQuarter: number, events: readonly MidiEvent[], end: number): Uint8Array<ArrayBuffer> {
  const track: number[] = []
  let before = 0
  for (const { at, bytes } of [...events, { at: end, bytes: metaEvent(0x2f, []) }]) {
    track.push(...variableLength(at - before), ...bytes)
    before = at
  }
  const header = [0, 1, ticksPerQuarter].flatMap((value) => bigEndian(value, 2))
  const heads = [...chunkHead('MThd', header.length), ...header, ...chunkHead('MTrk', track.length)]
  const file = new Uint8Array(heads.length + track.length)
  file.set(heads)
  file.set(track, heads.length)
  return file
}
