import { open } from 'node:fs/promises'
import { dances } from '../dance/dances.ts'
import { MOST_BYTES } from '../figure/byteLength.ts'
import { parseFigure } from '../figure/parse.ts'
import { plainText } from '../figure/plainText.ts'
import type { Problem } from '../problem.ts'
import { schedule } from '../timing/schedule.ts'
import { perform } from '../transfer/perform.ts'
import { chartRows } from '../words/chartRows.ts'
import { problemSentence } from '../words/problemWords.ts'
import { wayName } from '../words/wayName.ts'
import { chartText } from './chartText.ts'
import { type Command, readArguments, USAGE } from './readArguments.ts'

/** Where it writes: whole lines. */
export type Output = { readonly out: (text: string) => void; readonly err: (text: string) => void }

/** 0: all is well; 1: a figure has errors; 2: the call is wrong. */
export type Status = 0 | 1 | 2

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** A file's text, never more than a byte above what a description may have. @throws when it cannot be read */
async function readLimited(file: string): Promise<string> {
  const handle = await open(file, 'r')
  try {
    const buffer = Buffer.alloc(MOST_BYTES + 1)
    let length = 0
    while (length < buffer.length) {
      const { bytesRead } = await handle.read(buffer, length, buffer.length - length)
      if (bytesRead === 0) break
      length += bytesRead
    }
    return buffer.toString('utf8', 0, length)
  } finally {
    await handle.close()
  }
}

const problemLine = (problem: Problem): string =>
  `${problemSentence(problem).line}${problem.severity === 'warning' ? ' (warning)' : ''}`

async function check(files: readonly string[], { out, err }: Output): Promise<Status> {
  let status: Status = 0
  for (const file of files) {
    try {
      const result = parseFigure(await readLimited(file), file)
      for (const problem of result.ok ? result.warnings : result.problems) out(problemLine(problem))
      if (!result.ok && status === 0) status = 1
    } catch (error) {
      err(`${plainText(file)}: cannot be read: ${plainText(reasonOf(error))}`)
      status = 2
    }
  }
  return status
}

async function chart(command: Command & { kind: 'chart' }, { out, err }: Output): Promise<Status> {
  const { file, as, way, every, timing } = command
  let text: string
  try {
    text = await readLimited(file)
  } catch (error) {
    err(`${plainText(file)}: cannot be read: ${plainText(reasonOf(error))}`)
    return 2
  }
  const result = parseFigure(text, file)
  for (const problem of result.ok ? result.warnings : result.problems) err(problemLine(problem))
  if (!result.ok) return 1
  const { figure } = result
  if (timing >= figure.timings.length) {
    err(`--timing is 1 to ${figure.timings.length} for this figure; here is ${timing + 1}`)
    return 2
  }
  const scheduled = schedule(figure, timing)
  const comparison = {
    dance: dances[figure.dance],
    schedule: scheduled,
    ideal: perform(scheduled, { kind: 'in time' }),
    panels: [{ way, performance: perform(scheduled, way) }],
  }
  const rows = chartRows(comparison, 0, every ?? scheduled.grid)
  out(chartText(as, figure, wayName(way), rows).replace(/\n$/, ''))
  return 0
}

/** Runs one command. @param args what follows the program's name */
export async function run(args: readonly string[], output: Output): Promise<Status> {
  const read = readArguments(args)
  if (!read.ok) {
    for (const line of read.wrong) output.err(plainText(line))
    output.err(USAGE)
    return 2
  }
  const { command } = read
  switch (command.kind) {
    case 'help':
      output.out(USAGE)
      return 0
    case 'check':
      return check(command.files, output)
    case 'chart':
      return chart(command, output)
  }
}
