/** What a sound is averaged over, seconds. */
export const SMOOTHED = 0.02

/**
 * The envelope: rectified, then the moving average of 20 ms around each sample. Before and after the samples it is still.
 * @param {ArrayLike<number>} samples
 * @param {number} sampleRate samples a second
 * @returns {readonly number[]} as many values as there are samples
 */
export function envelope(samples, sampleRate) {
  const width = Math.round(SMOOTHED * sampleRate)
  const before = Math.floor(width / 2)
  const sums = [0]
  let sum = 0
  for (let at = 0; at < samples.length; at++) {
    sum += Math.abs(samples[at] ?? 0)
    sums.push(sum)
  }
  return Array.from({ length: samples.length }, (_, at) => {
    const from = Math.max(0, at - before)
    const to = Math.min(samples.length, at - before + width)
    return ((sums[to] ?? 0) - (sums[from] ?? 0)) / width
  })
}
