const DENOMINATORS = [1, 2, 4, 8, 16]

/** A number as one types it: "1/4", "3/4", "1"; as a decimal where it is no sixteenth. */
export function plainFraction(value: number): string {
  const under = DENOMINATORS.find((denominator) => Number.isInteger(value * denominator))
  if (under === undefined) return String(value)
  return under === 1 ? String(value) : `${value * under}/${under}`
}
