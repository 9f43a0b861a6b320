import type { Tick } from '../sound/tick.ts'
import { metreEvent, readMetre } from './metreEvent.ts'
import { type MidiEvent, metaEvent, midiTrack } from './midiTrack.ts'
import { tempoEvent } from './tempoEvent.ts'
import { LARGEST } from './variableLength.ts'

/** A multiple of 48: every place on the beat's exact parts, 1/48, falls on a MIDI tick. */
const TICKS_PER_QUARTER = 480
/** A 32nd: short, but long enough for an instrument to sound. */
const NOTE_TICKS = 60

// Channel 10, percussion, counted from 0 in the bytes.
const NOTE_ON = 0x99
const NOTE_OFF = 0x89
/** A release that says nothing of its speed, from memory of the MIDI 1.0 specification. */
const PLAIN_RELEASE = 64

/**
 * Keys of the percussion map of General MIDI System Level 1 (MMA0007/RP003), read in the documentation of the crate
 * midi-msg: 76 high wood block, 77 low wood block, 42 closed hi-hat. Loudness by our own judgement.
 */
const CLICKS = {
  bar: { key: 76, velocity: 120 },
  beat: { key: 77, velocity: 96 },
  half: { key: 42, velocity: 56 },
} as const

export type MidiClicks = {
  /** What sequencers show as the track's name; '' leaves it out. */
  readonly title: string
  /**
   * As danced, e.g. "3/4": a beat is one of its lower notes, in all ten dances a quarter (samba and paso doble in 2/4; tango
   * as it is danced, in 4/4, where its music is written in 2/4). A file's bars are counted from its start: where a round begins
   * on another count than 1, or is no whole number of bars, they are not the bars of the clicks.
   */
  readonly timeSignature: string
  /** Quarter notes a minute: the beats a minute of all ten dances. */
  readonly quartersPerMinute: number
  /** One round, in any order; ticks without a click stay silent. */
  readonly ticks: readonly Tick[]
  /** Beats in a round, above 0. */
  readonly length: number
  /** A whole number, 1 or more. */
  readonly rounds: number
}

/** Line breaks, control and format characters, and half a character: they have no place in a name. */
const name = (title: string): Uint8Array =>
  new TextEncoder().encode(title.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu, ''))

type Click = { readonly at: number; readonly sound: { readonly key: number; readonly velocity: number } }

/** All clicks of all rounds, in MIDI ticks. Each is rounded from its own place in the file, so that nothing adds up. */
function clicksOf({ ticks, length, rounds }: MidiClicks, ticksPerBeat: number, end: number): Click[] {
  const inOrder = ticks.toSorted((one, other) => one.at - other.at)
  return Array.from({ length: rounds }, (_, round) =>
    inOrder.flatMap(({ at, click }) => {
      if (click === null) return []
      // Rounded, a last click may come to lie on the end, where no note has room.
      const place = Math.min(end - 1, Math.round((round * length + at) * ticksPerBeat))
      return [{ at: place, sound: CLICKS[click] }]
    }),
  ).flat()
}

/** A click's two events; it is over when the next begins (at once, where both round to one MIDI tick). */
function noteOf({ at, sound }: Click, next: number): [MidiEvent, MidiEvent] {
  return [
    { at, bytes: [NOTE_ON, sound.key, sound.velocity] },
    { at: Math.min(at + NOTE_TICKS, next), bytes: [NOTE_OFF, sound.key, PLAIN_RELEASE] },
  ]
}

/**
 * The clicks of so many rounds as a Standard MIDI File: format 0, 480 ticks a quarter; metre, tempo, name, notes. The track
 * ends where the last round does.
 * @throws RangeError on a tempo that such a file cannot hold (below 3.5763 quarter notes a minute), a metre that is none,
 *   a tick outside the round, a number of rounds that is no whole one, or more than 2²⁸ − 1 MIDI ticks (559,240 quarters)
 */
export function midiFile(clicks: MidiClicks): Uint8Array<ArrayBuffer> {
  const { title, timeSignature, quartersPerMinute, ticks, length, rounds } = clicks
  const metre = readMetre(timeSignature)
  const ticksPerBeat = (TICKS_PER_QUARTER * 4) / metre.note
  if (!(Number.isInteger(rounds) && rounds >= 1)) {
    throw new RangeError(`rounds must be a whole number of 1 or more, got ${rounds}`)
  }
  const end = Math.round(rounds * length * ticksPerBeat)
  if (!(end >= 1 && end <= LARGEST)) {
    throw new RangeError(`a MIDI file must have 1 to ${LARGEST} ticks, ${rounds} rounds of ${length} beats have ${end}`)
  }
  const outside = ticks.find(({ at }) => !(at >= 0 && at < length))
  if (outside !== undefined) throw new RangeError(`a tick must be in [0, ${length}), got ${outside.at}`)

  const notes = clicksOf(clicks, ticksPerBeat, end).flatMap((click, index, all) =>
    noteOf(click, all[index + 1]?.at ?? end),
  )
  const named = name(title)
  const head = [
    metreEvent(metre),
    tempoEvent(quartersPerMinute),
    ...(named.length === 0 ? [] : [metaEvent(0x03, named)]),
  ].map((bytes) => ({ at: 0, bytes }))
  return midiTrack(TICKS_PER_QUARTER, [...head, ...notes], end)
}
