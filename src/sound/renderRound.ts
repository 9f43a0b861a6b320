import { mixed } from './mixed.ts'
import { type AskedRound, type RoundTime, roundTime } from './roundTime.ts'
import { type Gains, soundsOf } from './soundsOf.ts'
import type { Tick } from './tick.ts'
import type { Voice } from './voice.ts'

/** One round as samples. */
export type Round = {
  /** Mono, −1 to 1. */
  readonly samples: Float32Array
  readonly sampleRate: number
  /** What a beat lasts in it, exactly: the round is a whole number of samples long. Within half a sample of what was asked for, over the round. */
  readonly secondsPerBeat: number
}

/** A round up to this long is one looping buffer: then a page that stalls cannot make it late. In seconds. */
const LONGEST = 30
/** Two are held while one takes the other's place: 16 MB. At 44.1 and 48 kHz the 30 s come first. */
const MOST_BYTES = 8_000_000

const fits = ({ length, sampleRate }: RoundTime): boolean =>
  length <= LONGEST * sampleRate && length * Float32Array.BYTES_PER_ELEMENT <= MOST_BYTES

/** Whether a round can be one looping buffer; a longer one is played in chunks. @throws RangeError as `roundTime` */
export const fitsOneBuffer = (asked: AskedRound): boolean => fits(roundTime(asked))

/**
 * One round of the loop as samples: clicks, and the words of a voice if there is one.
 * @throws RangeError when the round is too long for one buffer, a tick lies outside it, a gain outside 0 to 1, or the sample
 * rate is under 8,000
 */
export function renderRound(ticks: readonly Tick[], asked: AskedRound, voice: Voice | null, gains?: Gains): Round {
  const time = roundTime(asked)
  if (!fits(time)) throw new RangeError(`a round of ${time.length} samples must be played in chunks`)
  const samples = mixed(soundsOf(ticks, time, voice, gains), time.length, 0, time.length)
  return { samples, sampleRate: time.sampleRate, secondsPerBeat: time.secondsPerBeat }
}
