import { parseArgs } from 'node:util'
import { shortestTimes } from '../transfer/shortestTimes.ts'
import type { Way } from '../transfer/way.ts'
import { type Seconds, seconds } from '../units.ts'
import type { CallProblem } from '../words/callSentence.ts'
import { given, type Option, oneOf, options, type Parsed, readDecimal } from './options.ts'
import { readWays } from './readWays.ts'

/** What is asked about one file. */
export type OfFile = {
  readonly file: string
  readonly as: Form
  /** null = the dance's own. */
  readonly barsPerMinute: number | null
  /** The shortest time in which the dancer carries the weight across. */
  readonly shortest: Seconds
  /** Index into the figure's timings. */
  readonly timing: number
}

export type Command =
  | { readonly kind: 'help' }
  | { readonly kind: 'check'; readonly files: readonly string[] }
  | ({
      readonly kind: 'chart'
      readonly way: Way
      /** Beats between rows; null = the figure's own grid. */
      readonly every: number | null
    } & OfFile)
  | ({
      readonly kind: 'measure'
      readonly ways: readonly Way[]
      /** Leaves out those that change nothing in the figure. */
      readonly all: boolean
    } & OfFile)

export type Form = 'table' | 'csv' | 'json'

/** What is asked for, or all that is wrong with the call. */
export type ReadArguments =
  | { readonly ok: true; readonly command: Command }
  | { readonly ok: false; readonly wrong: readonly CallProblem[] }

const FORMS: readonly Form[] = ['table', 'csv', 'json']
const EVERY = { '1/2': 0.5, '1/4': 0.25, '1/8': 0.125 } as const

const ALL_OPTIONS = Object.keys(options) as Option[]
/** The options that each command has. */
const OPTIONS_OF = {
  check: [],
  chart: ALL_OPTIONS,
  measure: ALL_OPTIONS.filter((option) => option !== 'every'),
} as const satisfies Record<string, readonly Option[]>

function readEvery(parsed: Parsed): number | null {
  if (parsed.values.every === undefined) return null
  const steps = Object.keys(EVERY) as (keyof typeof EVERY)[]
  const every = oneOf(parsed, 'every', steps, '1/2')
  return every === null ? null : EVERY[every]
}

function readTempo(parsed: Parsed): number | null {
  const value = given(parsed, 'tempo')
  if (value === null) return null
  const barsPerMinute = readDecimal(value)
  if (barsPerMinute > 0) return barsPerMinute
  parsed.wrong.push({ kind: 'no tempo', value })
  return null
}

function readShortest(parsed: Parsed): Seconds {
  const { quickest, comfortable } = shortestTimes
  const value = given(parsed, 'shortest')
  const time = value === null ? comfortable : readDecimal(value)
  if (time >= quickest && time <= comfortable) return seconds(time)
  parsed.wrong.push({ kind: 'no seconds', option: 'shortest', value: value ?? '', from: quickest, to: comfortable })
  return comfortable
}

function readTiming(parsed: Parsed): number {
  const timing = given(parsed, 'timing') ?? '1'
  if (!/^[1-9]\d{0,3}$/.test(timing)) parsed.wrong.push({ kind: 'no timing', value: timing })
  return Number(timing) - 1
}

function readOfFile(parsed: Parsed, kind: 'chart' | 'measure', file: string): Command {
  const as = oneOf(parsed, 'as', FORMS, 'table') ?? 'table'
  const { ways, all } = readWays(parsed, kind === 'measure')
  const every = kind === 'chart' ? readEvery(parsed) : null
  const [barsPerMinute, shortest] = [readTempo(parsed), readShortest(parsed)]
  const ofFile: OfFile = { file, as, barsPerMinute, shortest, timing: readTiming(parsed) }
  if (kind === 'measure') return { kind, ways, all, ...ofFile }
  return { kind, way: ways[0] ?? { kind: 'in time' }, every, ...ofFile }
}

/** @param args what follows the program's name */
export function readArguments(args: readonly string[]): ReadArguments {
  // Not strict: that would throw at the first mistake, and all of them are to be said at once.
  const taken = { ...options, help: { type: 'boolean', short: 'h' } } as const
  const parsing = { args: [...args], options: taken, strict: false, allowPositionals: true, tokens: true } as const
  const { values, positionals, tokens } = parseArgs(parsing)
  if (values.help === true) return { ok: true, command: { kind: 'help' } }

  const wrong: CallProblem[] = []
  const named = tokens.flatMap((token) => (token.kind === 'option' ? [token] : []))
  const unknown = named.filter(({ name }) => !Object.hasOwn(taken, name))
  for (const { rawName } of unknown) wrong.push({ kind: 'unknown option', name: rawName })

  const [command, ...files] = positionals
  const [file] = files
  if (command !== 'check' && command !== 'chart' && command !== 'measure') {
    wrong.push(command === undefined ? { kind: 'no command' } : { kind: 'unknown command', name: command })
    return { ok: false, wrong }
  }
  if (file === undefined || files.includes('')) wrong.push({ kind: 'no file', command })
  const had: readonly string[] = OPTIONS_OF[command]
  for (const { name } of named) {
    if (Object.hasOwn(options, name) && !had.includes(name))
      wrong.push({ kind: 'option not of', option: name, command })
  }
  let read: Command
  if (command === 'check') read = { kind: 'check', files }
  else {
    // What follows an unknown option may be its value and no file.
    if (files.length > 1 && unknown.length === 0) wrong.push({ kind: 'several files', command })
    read = readOfFile({ values, wrong }, command, file ?? '')
  }
  return wrong.length > 0 ? { ok: false, wrong } : { ok: true, command: read }
}
