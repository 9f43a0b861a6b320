import { plainText } from '../figure/plainText.ts'
import type { Problem } from '../problem.ts'
import { problemSentence } from './problemWords.ts'

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
  | { readonly kind: 'no part'; readonly option: string; readonly value: string; readonly least: string }
  | { readonly kind: 'no timing'; readonly value: string }
  | { readonly kind: 'timing not of figure'; readonly file: string; readonly timings: number; readonly value: number }
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

/** What is wrong with a call, on one line and without a full stop, as terminals have it. */
export function callSentence(problem: CallProblem): string {
  switch (problem.kind) {
    case 'no command':
      return 'say what to do: check or chart'
    case 'unknown command':
      return `“${plainText(problem.name)}” is no command; there are check and chart`
    case 'unknown option':
      return `${plainText(problem.name)} is no option`
    case 'option without value':
      return `--${problem.option} wants a value`
    case 'option not of':
      return `${problem.command} has no option --${problem.option}`
    case 'not one of':
      return `--${problem.option} is one of ${problem.allowed.join(', ')}; here is “${plainText(problem.value)}”`
    case 'no part':
      return `--${problem.option} is a fraction from ${problem.least} to 1, such as 1/2; here is “${plainText(problem.value)}”`
    case 'no timing':
      return `--timing is 1 for the figure’s first timing, 2 for its second; here is “${plainText(problem.value)}”`
    case 'timing not of figure':
      return `${plainText(problem.file)}: --timing is from 1 to ${problem.timings} in this figure; here is ${problem.value}`
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

/** How the command line is called; ends with a line break. */
export const USAGE = `npm run --silent figure -- check FILES…
  Checks figure files: a line for each problem, with file, line and column.
npm run --silent figure -- chart FILE [--as table|csv|json] [--performance in-time|late|early]
    [--late 1/2] [--early-part 1/2] [--every 1/2|1/4|1/8] [--timing 1]
  Charts a figure: where feet and weight are at every half beat.
Ends with 0 when all is well, 1 when a figure has errors, 2 when the call is wrong or a file cannot be read.
`
