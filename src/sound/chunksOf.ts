import { mixed } from './mixed.ts'
import { type AskedRound, roundTime, sampleAt } from './roundTime.ts'
import { type Gains, soundsOf } from './soundsOf.ts'
import type { Tick } from './tick.ts'
import type { Voice } from './voice.ts'

/** A round in parts, each made when it is asked for. */
export type Chunks = {
  readonly sampleRate: number
  /** What a beat lasts, exactly: as in the whole round. */
  readonly secondsPerBeat: number
  /** Samples in the round. */
  readonly length: number
  /** The first sample of each chunk; a chunk ends where the next begins, the last one with the round. */
  readonly starts: readonly number[]
  /** The samples of one chunk: those of the whole round from its start on. @throws RangeError when there is no such chunk */
  readonly samplesOf: (index: number) => Float32Array
}

const BARS = 4
/**
 * The largest chunk: 10 s at 48 kHz. Whoever plays a hidden page holds the one that sounds and those that begin in the next
 * 62 s: with chunks of this size 16 MB hold them at any tempo.
 */
const MOST_BYTES = 2_000_000

/**
 * A round of any length cut into chunks of four bars, counted from its start; of two bars, one or less where four would be
 * too large (at 48 kHz from 10 s on).
 * @throws RangeError when a tick lies outside the round, a gain outside 0 to 1, or the sample rate is under 8,000
 */
export function chunksOf(
  ticks: readonly Tick[],
  asked: AskedRound & { readonly beatsPerBar: number },
  voice: Voice | null,
  gains?: Gains,
): Chunks {
  const time = roundTime(asked)
  const sounds = soundsOf(ticks, time, voice, gains)
  let beats = BARS * asked.beatsPerBar
  while (sampleAt(time, beats) * Float32Array.BYTES_PER_ELEMENT > MOST_BYTES) beats /= 2
  const count = Math.ceil(time.beats / beats - 1e-9)
  const starts = Array.from({ length: count }, (_, k) => Math.round(sampleAt(time, k * beats)))
  return {
    sampleRate: time.sampleRate,
    secondsPerBeat: time.secondsPerBeat,
    length: time.length,
    starts,
    samplesOf(index) {
      const from = starts[index]
      if (from === undefined) throw new RangeError(`there is no chunk ${index} of ${count}`)
      return mixed(sounds, time.length, from, starts[index + 1] ?? time.length)
    },
  }
}
