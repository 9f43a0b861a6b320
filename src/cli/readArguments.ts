import { parseArgs } from 'node:util'
import { readFraction } from '../figure/readFraction.ts'
import { faultOf, wayOf } from '../transfer/faults.ts'
import type { Way } from '../transfer/way.ts'
import type { CallProblem } from '../words/callSentence.ts'

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

/** What is asked for, or all that is wrong with the call. */
export type ReadArguments =
  | { readonly ok: true; readonly command: Command }
  | { readonly ok: false; readonly wrong: readonly CallProblem[] }

const OPTIONS = {
  as: { type: 'string' },
  performance: { type: 'string' },
  late: { type: 'string' },
  'early-part': { type: 'string' },
  every: { type: 'string' },
  timing: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const
type Option = Exclude<keyof typeof OPTIONS, 'help'>

const FORMS: readonly ChartForm[] = ['table', 'csv', 'json']
const EVERY = { '1/2': 0.5, '1/4': 0.25, '1/8': 0.125 } as const
const PERFORMANCES = ['in-time', 'late', 'early'] as const

type Parsed = {
  readonly values: { readonly [key: string]: string | boolean | undefined }
  readonly wrong: CallProblem[]
}

/** An option's text; `usual` where it is not given, or given without a value (which is then said). */
function text({ values, wrong }: Parsed, option: Option, usual: string): string {
  const value = values[option]
  if (value === undefined) return usual
  if (typeof value === 'string' && value !== '') return value
  wrong.push({ kind: 'option without value', option })
  return usual
}

function oneOf<Word extends string>(parsed: Parsed, option: Option, allowed: readonly Word[], usual: Word): Word {
  const value = text(parsed, option, usual)
  const found = allowed.find((word) => word === value)
  if (found === undefined) parsed.wrong.push({ kind: 'not one of', option, value, allowed })
  return found ?? usual
}

function part(parsed: Parsed, option: Option, least: string, leastValue: number, most = 1): number {
  const value = text(parsed, option, '1/2')
  const read = readFraction(value)
  const number = read === null ? Number.NaN : read.numerator / read.denominator
  if (number >= leastValue && number <= most) return number
  parsed.wrong.push({ kind: 'no part', option, value, least })
  return 0.5
}

function readChart(parsed: Parsed, file: string): Command {
  const as = oneOf(parsed, 'as', FORMS, 'table')
  const performance = oneOf(parsed, 'performance', PERFORMANCES, 'in-time')
  const late = part(parsed, 'late', '0', 0, faultOf('late').amount?.to)
  const early = part(parsed, 'early-part', '1/4', faultOf('early').amount?.from ?? 0)
  const steps = Object.keys(EVERY) as (keyof typeof EVERY)[]
  const every = parsed.values.every === undefined ? null : EVERY[oneOf(parsed, 'every', steps, '1/2')]
  const timing = text(parsed, 'timing', '1')
  if (!/^[1-9]\d{0,3}$/.test(timing)) parsed.wrong.push({ kind: 'no timing', value: timing })
  const ways: Readonly<Record<(typeof PERFORMANCES)[number], Way>> = {
    'in-time': { kind: 'in time' },
    late: wayOf('late', late),
    early: wayOf('early', early),
  }
  return { kind: 'chart', file, as, way: ways[performance], every, timing: Number(timing) - 1 }
}

/** @param args what follows the program's name */
export function readArguments(args: readonly string[]): ReadArguments {
  // Not strict: that would throw at the first mistake, and all of them are to be said at once.
  const parsing = { args: [...args], options: OPTIONS, strict: false, allowPositionals: true, tokens: true } as const
  const { values, positionals, tokens } = parseArgs(parsing)
  if (values.help === true) return { ok: true, command: { kind: 'help' } }

  const wrong: CallProblem[] = []
  const options = tokens.flatMap((token) => (token.kind === 'option' ? [token] : []))
  const unknown = options.filter(({ name }) => !Object.hasOwn(OPTIONS, name))
  for (const { rawName } of unknown) wrong.push({ kind: 'unknown option', name: rawName })

  const [command, ...files] = positionals
  const [file] = files
  const parsed: Parsed = { values, wrong }
  let read: Command = { kind: 'help' }
  if (command === 'check' || command === 'chart') {
    if (file === undefined || files.includes('')) wrong.push({ kind: 'no file', command })
  } else wrong.push(command === undefined ? { kind: 'no command' } : { kind: 'unknown command', name: command })
  if (command === 'check') {
    for (const { name } of options) {
      if (Object.hasOwn(OPTIONS, name)) wrong.push({ kind: 'option not of', option: name, command })
    }
    read = { kind: 'check', files }
  }
  if (command === 'chart') {
    // What follows an unknown option may be its value and no file.
    if (files.length > 1 && unknown.length === 0) wrong.push({ kind: 'several files', command })
    read = readChart(parsed, file ?? '')
  }
  return wrong.length > 0 ? { ok: false, wrong } : { ok: true, command: read }
}
