import { fraction } from './fraction.ts'

const FIRST_PARTS: Readonly<Record<string, string>> = {
  '¼': 'first quarter',
  '½': 'first half',
  '¾': 'first three quarters',
}

/** The first part of the step's time, in words: "first half"; in per cent where there is no word for it. @param part 0 to 1 */
export const firstPart = (part: number): string => FIRST_PARTS[fraction(part)] ?? `first ${Math.round(part * 100)} %`
