const FRACTIONS: Readonly<Record<string, string>> = {
  '0.25': '¼',
  '0.5': '½',
  '0.75': '¾',
  '0.125': '⅛',
  '0.375': '⅜',
  '0.625': '⅝',
  '0.875': '⅞',
}

/** A number of beats as it is written: "½", "1¼", "2"; two decimals where no such sign exists. */
export function fraction(value: number): string {
  const whole = Math.floor(value + 1e-9)
  const rest = value - whole
  if (rest < 1e-6) return String(whole)
  const sign = FRACTIONS[String(Math.round(rest * 1000) / 1000)]
  if (sign === undefined) return value.toFixed(2)
  return whole === 0 ? sign : `${whole}${sign}`
}

/** "½ beat", "1 beat", "1½ beats". */
export const beatsInWords = (value: number): string => `${fraction(value)} ${value > 1 + 1e-9 ? 'beats' : 'beat'}`
