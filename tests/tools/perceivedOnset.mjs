import { envelope, SMOOTHED } from './envelope.mjs'

/**
 * How high, as a part of the highest, the envelope must come for its rise to count. What is lower is a consonant before
 * the vowel, or a ripple: a word is heard to begin near its vowel, not where its s begins (J. Morton, S. Marcus and
 * C. Frankish, Psychol. Rev. 83:405–408, 1976; from memory).
 */
const COUNTS = 2 / 3

/**
 * Where a word is perceived to begin: where its envelope, on its first rise, last passes half the height of that rise. The
 * rise ends at its first maximum, which is the first value that counts and that nothing in the next 20 ms surpasses.
 * @param {ArrayLike<number>} samples one word, with as much silence around it as one likes
 * @param {number} sampleRate samples a second
 * @param {number} [counts] how high a rise must come to count, as a part of the highest
 * @returns {number} samples from the start
 * @throws {RangeError} when there is nothing to be heard
 */
export function perceivedOnset(samples, sampleRate, counts = COUNTS) {
  const heights = envelope(samples, sampleRate)
  const highest = heights.reduce((most, height) => Math.max(most, height), 0)
  if (highest === 0) throw new RangeError('nothing to be heard')
  const stands = Math.round(SMOOTHED * sampleRate)
  let top = 0
  let height = 0
  for (const [at, here] of heights.entries()) {
    if (height >= counts * highest && at > top + stands) break
    if (here <= height) continue
    top = at
    height = here
  }
  let onset = top
  while (onset > 0 && (heights[onset - 1] ?? 0) >= height / 2) onset--
  return onset
}
