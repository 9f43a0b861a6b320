import { plainText } from '../figure/plainText.ts'
import type { Problem } from '../problem.ts'
import { listed } from './listed.ts'
import { plainFraction } from './plainFraction.ts'
import { problemSentence } from './problemWords.ts'

/** Both ends included. */
type NumberRange = { readonly from: number; readonly to: number }

/** What can be wrong with a call of the command line. */
export type CallProblem =
  | { readonly kind: 'no command' }
  | { readonly kind: 'unknown command' | 'unknown option'; readonly name: string }
  | { readonly kind: 'option without value'; readonly option: string }
  | { readonly kind: 'option not of'; readonly option: string; readonly command: string }
  | {
      readonly kind: 'not one of'
      readonly option: string
      readonly value: string
      readonly allowed: readonly string[]
    }
  | {
      readonly kind: 'no part'
      readonly option: string
      readonly value: string
      readonly from: number
      readonly to: number
      readonly usual: number
    }
  | { readonly kind: 'not with'; readonly option: string; readonly performance: string }
  | { readonly kind: 'said twice'; readonly options: readonly [string, string] }
  | { readonly kind: 'one step only'; readonly performance: string; readonly steps: readonly number[] }
  | { readonly kind: 'no timing' | 'no steps' | 'no tempo'; readonly value: string }
  | ({ readonly kind: 'no seconds'; readonly option: string; readonly value: string } & NumberRange)
  | { readonly kind: 'timing not of figure'; readonly file: string; readonly timings: number; readonly value: number }
  | {
      readonly kind: 'steps not of figure'
      readonly file: string
      readonly steps: number
      readonly missing: readonly number[]
    }
  | ({
      readonly kind: 'tempo not of dance'
      readonly file: string
      readonly dance: string
      readonly value: number
    } & NumberRange)
  | { readonly kind: 'changes nothing'; readonly file: string; readonly name: string }
  | { readonly kind: 'no file'; readonly command: string }
  | { readonly kind: 'several files'; readonly command: string }
  | { readonly kind: 'unreadable'; readonly file: string; readonly why: Unreadable }

/** Why a file could not be read. */
export type Unreadable = 'missing' | 'a folder' | 'forbidden' | 'failed'

const UNREADABLE: Readonly<Record<Unreadable, string>> = {
  missing: 'there is no such file',
  'a folder': 'this is a folder; name the files in it',
  forbidden: 'you may not read this file',
  failed: 'this file cannot be read',
}

/** To three decimals, which no tempo's limits exceed. */
const decimal = (value: number): string => String(Number(value.toFixed(3)))

const numbers = (values: readonly number[]): string => listed(values.map(String))

/** What is wrong with a call, on one line and without a full stop, as terminals have it. */
export function callSentence(problem: CallProblem): string {
  switch (problem.kind) {
    case 'no command':
      return 'say what to do: check, chart or measure'
    case 'unknown command':
      return `“${plainText(problem.name)}” is no command; there are check, chart and measure`
    case 'unknown option':
      return `${plainText(problem.name)} is no option`
    case 'option without value':
      return `--${problem.option} wants a value`
    case 'option not of':
      return `${problem.command} has no option --${problem.option}`
    case 'not one of':
      return `--${problem.option} is one of ${problem.allowed.join(', ')}; here is “${plainText(problem.value)}”`
    case 'no part':
      return `--${problem.option} is a fraction from ${plainFraction(problem.from)} to ${plainFraction(problem.to)}, such as ${plainFraction(problem.usual)}; here is “${plainText(problem.value)}”`
    case 'not with':
      return `--performance ${problem.performance} has no --${problem.option}`
    case 'said twice':
      return `--${problem.options[0]} and --${problem.options[1]} say the same; one of them is enough`
    case 'one step only':
      return `--performance ${problem.performance} is made on one step; --steps names ${numbers(problem.steps)}`
    case 'no steps':
      return `--steps are numbers from 1 with commas between them, such as 2,3; here is “${plainText(problem.value)}”`
    case 'no tempo':
      return `--tempo is a number of bars a minute, such as 29 or 29.5; here is “${plainText(problem.value)}”`
    case 'no seconds':
      return `--${problem.option} is seconds from ${decimal(problem.from)} to ${decimal(problem.to)}; here is “${plainText(problem.value)}”`
    case 'no timing':
      return `--timing is 1 for the figure’s first timing, 2 for its second; here is “${plainText(problem.value)}”`
    case 'timing not of figure':
      return `${plainText(problem.file)}: --timing is from 1 to ${problem.timings} in this figure; here is ${problem.value}`
    case 'steps not of figure':
      return `${plainText(problem.file)}: this figure has ${problem.steps} ${problem.steps === 1 ? 'step' : 'steps'}; --steps names ${numbers(problem.missing)}`
    case 'tempo not of dance':
      return `${plainText(problem.file)}: --tempo is from ${decimal(problem.from)} to ${decimal(problem.to)} bars a minute in ${problem.dance}; here is ${problem.value}`
    case 'changes nothing':
      return `${plainText(problem.file)}: “${problem.name}” changes nothing in this figure (warning)`
    case 'no file':
      return `${problem.command} wants a file`
    case 'several files':
      return `${problem.command} takes one file at a time`
    case 'unreadable':
      return `${plainText(problem.file)}: ${UNREADABLE[problem.why]}`
  }
}

/** A figure's problem on one line: `file:line:column code …`, warnings marked. */
export const problemLine = (problem: Problem): string =>
  `${problemSentence(problem).line}${problem.severity === 'warning' ? ' (warning)' : ''}`
