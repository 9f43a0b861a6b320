import { resolve } from 'node:path'
import { type ParseResult, parseFigure } from '../figure/parse.ts'
import type { Way } from '../transfer/way.ts'
import { type CallProblem, callSentence, problemLine } from '../words/callSentence.ts'
import { chartRows } from '../words/chartRows.ts'
import { measureOf } from '../words/measureOf.ts'
import { usage } from '../words/usage.ts'
import { wayName } from '../words/wayName.ts'
import { chartText } from './chartText.ts'
import { measureText } from './measureText.ts'
import { type Prepared, prepare } from './prepare.ts'
import { type Command, type OfFile, readArguments } from './readArguments.ts'
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

/** A file's figure with the ways that are asked for danced; a status where there is none, and why is then said. */
async function prepared(asked: OfFile, ways: readonly Way[], around: Surroundings): Promise<Prepared | Status> {
  const result = await parseFile(asked.file, around)
  if (result === null) return 2
  around.err(problemLines(result))
  if (!result.ok) return 1
  const made = prepare(result.figure, asked, ways)
  if (made.ok) return made.prepared
  for (const problem of made.wrong) say(around, problem)
  return 2
}

function sayWithout(file: string, { without }: Prepared, around: Surroundings): void {
  for (const way of without) say(around, { kind: 'changes nothing', file, name: wayName(way) })
}

async function chart(command: Command & { kind: 'chart' }, around: Surroundings): Promise<Status> {
  const { file, as, way, shortest } = command
  const made = await prepared(command, [way], around)
  if (typeof made === 'number') return made
  sayWithout(file, made, around)
  const { comparison, barsPerMinute } = made
  const { schedule } = comparison
  const every = command.every ?? schedule.grid
  const rows = chartRows(comparison, 0, every)
  around.out(chartText(as, { schedule, way, barsPerMinute, shortest, every, rows }))
  return 0
}

async function measure(command: Command & { kind: 'measure' }, around: Surroundings): Promise<Status> {
  const { file, as, ways, all, shortest } = command
  const made = await prepared(command, ways, around)
  if (typeof made === 'number') return made
  // Of all there are, those that change nothing are left out; of one that was asked for, it is said.
  if (!all) sayWithout(file, made, around)
  const { comparison, barsPerMinute, beatLasts, without } = made
  const measures = comparison.panels.flatMap(({ way }, panel) =>
    all && without.includes(way) ? [] : [measureOf(comparison, panel, beatLasts)],
  )
  around.out(measureText(as, { schedule: comparison.schedule, barsPerMinute, shortest, all, measures }))
  return 0
}

/** Runs one command. @param args what follows the program's name */
export async function run(args: readonly string[], around: Surroundings): Promise<Status> {
  const read = readArguments(args)
  if (!read.ok) {
    for (const problem of read.wrong) say(around, problem)
    around.err(usage)
    return 2
  }
  const { command } = read
  switch (command.kind) {
    case 'help':
      around.out(usage)
      return 0
    case 'check':
      return check(command.files, around)
    case 'chart':
      return chart(command, around)
    case 'measure':
      return measure(command, around)
  }
}
