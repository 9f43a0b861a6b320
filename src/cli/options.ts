import { readFraction } from '../figure/readFraction.ts'
import type { CallProblem } from '../words/callSentence.ts'

/** Every option but --help. */
export const options = {
  as: { type: 'string' },
  performance: { type: 'string' },
  amount: { type: 'string' },
  late: { type: 'string' },
  'early-part': { type: 'string' },
  steps: { type: 'string' },
  tempo: { type: 'string' },
  shortest: { type: 'string' },
  every: { type: 'string' },
  timing: { type: 'string' },
} as const
export type Option = keyof typeof options

export type Parsed = {
  readonly values: { readonly [key: string]: string | boolean | undefined }
  /** What is found wrong is put here. */
  readonly wrong: CallProblem[]
}

type Limits = { readonly from: number; readonly to: number }

/** An option's text; null where it is not given, or given without a value (which is then said). */
export function given({ values, wrong }: Parsed, option: Option): string | null {
  const value = values[option]
  if (value === undefined) return null
  if (typeof value === 'string' && value !== '') return value
  wrong.push({ kind: 'option without value', option })
  return null
}

/** One of some words; null where it is none of them, which is then said. */
export function oneOf<Word extends string>(
  parsed: Parsed,
  option: Option,
  allowed: readonly Word[],
  usual: Word,
): Word | null {
  const value = given(parsed, option) ?? usual
  const found = allowed.find((word) => word === value)
  if (found === undefined) parsed.wrong.push({ kind: 'not one of', option, value, allowed })
  return found ?? null
}

/** A fraction within limits; null where there is none, or none that will do, which is then said. */
export function fractionIn(parsed: Parsed, option: Option, { from, to, usual }: Limits & { usual: number }) {
  const value = given(parsed, option)
  if (value === null) return null
  const read = readFraction(value)
  const number = read === null ? Number.NaN : read.numerator / read.denominator
  if (number >= from && number <= to) return number
  parsed.wrong.push({ kind: 'no part', option, value, from, to, usual })
  return null
}

/** "29", "0.42"; NaN for anything else. */
export const readDecimal = (text: string): number => (/^\d{1,4}(\.\d{1,6})?$/.test(text) ? Number(text) : Number.NaN)
