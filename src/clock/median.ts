/** The two in the middle: the same one of an odd number. @param values at least one */
export function middles(values: readonly number[]): readonly [number, number] {
  const rising = [...values].sort((a, b) => a - b)
  const middle = (rising.length - 1) / 2
  return [rising[Math.floor(middle)] as number, rising[Math.ceil(middle)] as number]
}

/** @param values at least one */
export function median(values: readonly number[]): number {
  const [low, high] = middles(values)
  return (low + high) / 2
}
