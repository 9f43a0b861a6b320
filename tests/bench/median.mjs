/**
 * The middle of the values; of an even number the mean of the two in the middle.
 * @param {readonly number[]} values
 * @returns {number}
 * @throws RangeError when there is none
 */
export function median(values) {
  if (values.length === 0) throw new RangeError('no values, no median')
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length >> 1
  const upper = sorted[half] ?? Number.NaN
  const lower = sorted[half - 1] ?? Number.NaN
  return sorted.length % 2 === 1 ? upper : (lower + upper) / 2
}
