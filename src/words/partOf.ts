import { fraction } from './fraction.ts'

const PARTS: Readonly<Record<string, string>> = { '¼': 'a quarter of', '½': 'half', '¾': 'three quarters of' }

/** A part of something, in words before it: "half", "three quarters of"; in per cent where there is no word. @param part 0 to 1 */
export const partOf = (part: number): string => PARTS[fraction(part)] ?? `${Math.round(part * 100)} % of`
