import { envelope } from './envelope.mjs'

/**
 * How loud a word is: the root of the mean square over its voiced part, which is where the envelope is at least half as high
 * as at its highest (hiss and the burst of a stop are lower).
 * @param {ArrayLike<number>} samples
 * @param {number} sampleRate samples a second
 */
export function voicedLevel(samples, sampleRate) {
  const heights = envelope(samples, sampleRate)
  const half = heights.reduce((most, height) => Math.max(most, height), 0) / 2
  const squares = heights.flatMap((height, at) => (height >= half ? [(samples[at] ?? 0) ** 2] : []))
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length)
}
