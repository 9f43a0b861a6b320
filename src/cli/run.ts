import { resolve } from 'node:path'
import { dances } from '../dance/dances.ts'
import { type ParseResult, parseFigure } from '../figure/parse.ts'
import { schedule } from '../timing/schedule.ts'
import type { Comparison } from '../transfer/comparison.ts'
import { perform } from '../transfer/perform.ts'
import { type CallProblem, callSentence, problemLine, USAGE } from '../words/callSentence.ts'
import { chartRows } from '../words/chartRows.ts'
import { chartText } from './chartText.ts'
import { type Command, readArguments } from './readArguments.ts'
import { readDescription } from './readDescription.ts'

/** What a command has of the world. */
export type Surroundings = {
  /** Where files are named from. */
  readonly folder: string
  /** Takes the answer, as it is. */
  readonly out: (text: string) => void
  /** Takes what is said beside it. */
  readonly err: (text: string) => void
}

/** 0: all is well; 1: a figure has errors; 2: the call is wrong, or a file cannot be read. */
export type Status = 0 | 1 | 2

const say = ({ err }: Surroundings, problem: CallProblem): void => err(`${callSentence(problem)}\n`)

/** What is in a file; null when it cannot be read, which is then said. */
async function parseFile(file: string, around: Surroundings): Promise<ParseResult | null> {
  const read = await readDescription(resolve(around.folder, file), file)
  switch (read.kind) {
    case 'text':
      return parseFigure(read.text, file)
    case 'too large':
      return { ok: false, problems: [read.problem] }
    case 'unreadable':
      say(around, { kind: 'unreadable', file, why: read.why })
      return null
  }
}

const problemLines = (result: ParseResult): string =>
  (result.ok ? result.warnings : result.problems).map((problem) => `${problemLine(problem)}\n`).join('')

async function check(files: readonly string[], around: Surroundings): Promise<Status> {
  let status: Status = 0
  for (const file of files) {
    const result = await parseFile(file, around)
    if (result === null) status = 2
    else if (!result.ok && status === 0) status = 1
    if (result !== null) around.out(problemLines(result))
  }
  return status
}

async function chart(command: Command & { kind: 'chart' }, around: Surroundings): Promise<Status> {
  const { file, as, way, timing } = command
  const result = await parseFile(file, around)
  if (result === null) return 2
  around.err(problemLines(result))
  if (!result.ok) return 1
  const { figure } = result
  const timings = figure.timings.length
  if (timing >= timings) {
    say(around, { kind: 'timing not of figure', file, timings, value: timing + 1 })
    return 2
  }
  const scheduled = schedule(figure, timing)
  const comparison: Comparison = {
    dance: dances[figure.dance],
    schedule: scheduled,
    ideal: perform(scheduled, { kind: 'in time' }),
    panels: [{ way, performance: perform(scheduled, way) }],
  }
  const every = command.every ?? scheduled.grid
  around.out(chartText(as, { schedule: scheduled, way, every, rows: chartRows(comparison, 0, every) }))
  return 0
}

/** Runs one command. @param args what follows the program's name */
export async function run(args: readonly string[], around: Surroundings): Promise<Status> {
  const read = readArguments(args)
  if (!read.ok) {
    for (const problem of read.wrong) say(around, problem)
    around.err(USAGE)
    return 2
  }
  const { command } = read
  switch (command.kind) {
    case 'help':
      around.out(USAGE)
      return 0
    case 'check':
      return check(command.files, around)
    case 'chart':
      return chart(command, around)
  }
}
