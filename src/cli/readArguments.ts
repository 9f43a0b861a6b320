import { parseArgs } from 'node:util'
import { readFraction } from '../figure/readFraction.ts'
import type { Way } from '../transfer/perform.ts'
import { beat, share } from '../units.ts'

export type Command =
  | { readonly kind: 'help' }
  | { readonly kind: 'check'; readonly files: readonly string[] }
  | {
      readonly kind: 'chart'
      readonly file: string
      readonly as: ChartForm
      readonly way: Way
      /** Beats between rows; null = the figure's own grid. */
      readonly every: number | null
      /** Index into the figure's timings. */
      readonly timing: number
    }

export type ChartForm = 'table' | 'csv' | 'json'

/** Every way to call it, and all that is wrong with a call. */
export type ReadArguments =
  | { readonly ok: true; readonly command: Command }
  | { readonly ok: false; readonly wrong: readonly string[] }

export const USAGE = `figure check FILES…
  Checks figure files. A line for each problem: file:line:column code, rule, mend.
figure chart FILE [--as table|csv|json] [--performance in-time|late|early] [--late 1/2] [--early-part 1/2]
             [--every 1/2|1/4|1/8] [--timing 1]
  Writes a figure's poses, a row for each half beat (quarter, eighth).
Ends with 0 when all is well, 1 when a figure has errors, 2 when the call is wrong.`

const OPTIONS = {
  as: { type: 'string' },
  performance: { type: 'string' },
  late: { type: 'string' },
  'early-part': { type: 'string' },
  every: { type: 'string' },
  timing: { type: 'string' },
  help: { type: 'boolean' },
} as const

const FORMS: readonly ChartForm[] = ['table', 'csv', 'json']
const EVERY: Readonly<Record<string, number>> = { '1/2': 0.5, '1/4': 0.25, '1/8': 0.125 }
const PERFORMANCES = ['in-time', 'late', 'early'] as const

/** @param args what follows the program's name */
export function readArguments(args: readonly string[]): ReadArguments {
  const wrong: string[] = []
  const { values, positionals, tokens } = parseArgs({
    args: [...args],
    options: OPTIONS,
    strict: false,
    allowPositionals: true,
    tokens: true,
  })
  for (const token of tokens) {
    if (token.kind === 'option' && !Object.hasOwn(OPTIONS, token.name)) wrong.push(`${token.rawName} is no option`)
  }
  if (values.help === true) return { ok: true, command: { kind: 'help' } }
  const [name, ...files] = positionals

  const text = (key: Exclude<keyof typeof OPTIONS, 'help'>, usual: string): string => {
    const value = values[key]
    if (value === undefined) return usual
    if (typeof value === 'string' && value !== '') return value
    wrong.push(`--${key} wants a value`)
    return usual
  }
  const one = <Word extends string>(key: 'as' | 'performance', words: readonly Word[], usual: Word): Word => {
    const value = text(key, usual)
    const found = words.find((word) => word === value)
    if (found === undefined) wrong.push(`--${key} is one of ${words.join(', ')}; here is "${value}"`)
    return found ?? usual
  }
  const part = (key: 'late' | 'early-part', least: string, allowed: (value: number) => boolean): number => {
    const value = text(key, '1/2')
    const read = readFraction(value)
    const number = read === null ? Number.NaN : read.numerator / read.denominator
    if (allowed(number)) return number
    wrong.push(`--${key} is a fraction from ${least} to 1, such as 1/2; here is "${value}"`)
    return 0.5
  }

  if (name === 'check') {
    const options = tokens.filter(({ kind }) => kind === 'option').length
    if (options > 0 && wrong.length === 0) wrong.push('check takes files and no options')
    if (files.length === 0) wrong.push('check wants at least one file')
    return wrong.length > 0 ? { ok: false, wrong } : { ok: true, command: { kind: 'check', files } }
  }
  if (name !== 'chart') {
    const got = name === undefined ? 'nothing' : `"${name}"`
    return { ok: false, wrong: [`the command is check or chart; here is ${got}`, ...wrong] }
  }
  const [file = '', ...more] = files
  if (file === '') wrong.push('chart wants a file')
  if (more.length > 0) wrong.push('chart takes one file')
  const performance = one('performance', PERFORMANCES, 'in-time')
  const late = part('late', '0', (value) => value >= 0 && value <= 1)
  const early = part('early-part', '1/8', (value) => value >= 1 / 8 && value <= 1)
  const as = one('as', FORMS, 'table')
  const everyText = values.every === undefined ? null : text('every', '1/2')
  const every = everyText === null ? null : (EVERY[everyText] ?? null)
  if (everyText !== null && every === null) {
    wrong.push(`--every is one of ${Object.keys(EVERY).join(', ')}; here is "${everyText}"`)
  }
  const timing = text('timing', '1')
  if (!/^[1-9]\d?$/.test(timing))
    wrong.push(`--timing is the number of one of the figure's timings; here is "${timing}"`)
  if (wrong.length > 0) return { ok: false, wrong }
  const ways: Readonly<Record<(typeof PERFORMANCES)[number], Way>> = {
    'in-time': { kind: 'in time' },
    late: { kind: 'late', by: beat(late) },
    early: { kind: 'early', part: share(early) },
  }
  return { ok: true, command: { kind: 'chart', file, as, way: ways[performance], every, timing: Number(timing) - 1 } }
}
