export type Fraction = { readonly numerator: number; readonly denominator: number }

const ONE_SIGN: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

const LONGEST = 16
const SIGNS = Object.keys(ONE_SIGN).join('')
const ANY_SIGN = new RegExp(`[${SIGNS}]`, 'u')
const OVER = '[0-9]{1,3}/0{0,2}[1-9][0-9]{0,2}'

/** "3/4", "1 1/2", "¾", "1½": what a fraction that is no whole number looks like, for those who check without reading. */
export const FRACTION_PATTERN = `([0-9]{1,3} +)?${OVER}|[0-9]{0,3} *[${SIGNS}]`

/** The same as one word, or a whole number: where spaces part one from the next. */
export const FRACTION_WORD_PATTERN = `${OVER}|[0-9]{0,3}[${SIGNS}]|[0-9]{1,3}`

/** "3", "3/4", "1 1/2", "¾" or "1½" as an exact fraction; null for anything else. Not reduced, never negative. */
export function readFraction(text: string): Fraction | null {
  if (text.length > LONGEST) return null
  const plain = text.replace(ANY_SIGN, (sign) => ` ${ONE_SIGN[sign]}`).trim()
  const found = /^(?:(?:(\d{1,3}) +)?(\d{1,3})\/(\d{1,3})|(\d{1,3}))$/.exec(plain)
  if (!found) return null
  const [, wholes = '0', over, under, alone] = found
  if (alone !== undefined) return { numerator: Number(alone), denominator: 1 }
  const denominator = Number(under)
  if (denominator === 0) return null
  return { numerator: Number(wholes) * denominator + Number(over), denominator }
}
