import { KNEE, softLimit } from './softLimit.ts'
import type { PlacedSound } from './soundsOf.ts'

/** Adds what of a sound falls into the samples. @param shift from a place in the sound to a place in the samples */
function add(samples: Float32Array, { samples: own, length, gain, fade }: PlacedSound, shift: number): void {
  const end = Math.min(length, samples.length - shift)
  const fading = Math.min(end, length - fade)
  let k = Math.max(0, -shift)
  for (; k < fading; k++) samples[k + shift] = (samples[k + shift] ?? 0) + gain * (own[k] ?? 0)
  for (; k < end; k++) {
    const left = (length - 1 - k) / fade
    samples[k + shift] = (samples[k + shift] ?? 0) + gain * left * (own[k] ?? 0)
  }
}

/**
 * A part of the loop, mixed and limited: what rings over the round's end goes on at its start. A sample depends on its place
 * alone and not on the part that is asked for.
 * @param round samples in the round
 * @param from the part's first sample, and `to` the one after its last; 0 ≤ from ≤ to ≤ round
 */
export function mixed(sounds: readonly PlacedSound[], round: number, from: number, to: number): Float32Array {
  const samples = new Float32Array(to - from)
  for (const sound of sounds) {
    // The earliest repetition that is still heard in the part, and all that begin before its end.
    const earliest = Math.floor((from - sound.start - sound.length) / round) + 1
    for (let place = sound.start + earliest * round; place < to; place += round) add(samples, sound, place - from)
  }
  // Nearly all of it is silence or quiet: only what is loud is worth a call.
  for (let k = 0; k < samples.length; k++) {
    const sample = samples[k] ?? 0
    if (sample > KNEE || sample < -KNEE) samples[k] = softLimit(sample)
  }
  return samples
}
