import { deepEqual } from 'node:assert'
import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { type Plugin, runnerImport } from 'vite'
import type { Figure } from '../figure/figure.ts'
import type { parseFigure } from '../figure/parse.ts'
import type { Problem } from '../problem.ts'

const VIRTUAL = 'virtual:figures'
const RESOLVED = `\0${VIRTUAL}`
const ENDING = '.figure.yaml'
const FOLDER = 'figures-demo'

export type FigureFile = { readonly name: string; readonly text: string }

/** One line to click on: `figures-demo/box.figure.yaml:4:9 timing-length timing="S Q Q" signs=3 actions=2`. */
function problemLine(folder: string, { code, where, values }: Problem): string {
  const facts = Object.entries(values).map(([key, value]) => ` ${key}=${JSON.stringify(value)}`)
  return `${folder}/${where.file}:${where.line}:${where.column} ${code}${facts.join('')}`
}

/**
 * The figures of the files, in the order of the files' names.
 * @throws Error with all problems of all files, a line each; or when a figure does not survive being written as JSON,
 * for the page gets it that way
 */
export function compileFigures(
  files: readonly FigureFile[],
  parse: typeof parseFigure,
  folder: string,
): { figures: readonly Figure[]; warnings: readonly string[] } {
  const figures: Figure[] = []
  const problems: string[] = []
  const warnings: string[] = []
  for (const { name, text } of files.toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
    const parsed = parse(text, name)
    if (parsed.ok) {
      deepEqual(JSON.parse(JSON.stringify(parsed.figure)), parsed.figure, `${folder}/${name} does not survive JSON`)
      figures.push(parsed.figure)
      warnings.push(...parsed.warnings.map((warning) => problemLine(folder, warning)))
    } else {
      problems.push(...parsed.problems.map((problem) => problemLine(folder, problem)))
    }
  }
  if (problems.length > 0) throw new Error(`figures with problems:\n${problems.join('\n')}`)
  return { figures, warnings }
}

/**
 * The demo figures.
 * @param repository path of the folder that holds `figures-demo` and `src`
 * @returns with the paths of their files
 */
export async function readFigures(
  repository: string,
): Promise<{ figures: readonly Figure[]; warnings: readonly string[]; files: readonly string[] }> {
  const names = (await readdir(join(repository, FOLDER))).filter((name) => name.endsWith(ENDING))
  if (names.length === 0) throw new Error(`${FOLDER}/ holds no *${ENDING}`)
  const paths = names.map((name) => join(repository, FOLDER, name))
  const files = await Promise.all(
    names.map(async (name, index) => ({ name, text: await readFile(paths[index] as string, 'utf8') })),
  )
  // By Vite's own runner: Node 20 cannot read TypeScript, and the parser is then asked for only here.
  const { module } = await runnerImport<{ parseFigure: typeof parseFigure }>(join(repository, 'src/figure/parse.ts'), {
    configFile: false,
    logLevel: 'error',
  })
  return { ...compileFigures(files, module.parseFigure, FOLDER), files: paths }
}

/**
 * Gives the page its demo figures as data, so that it needs no parser (30 KiB) to show its first picture.
 * @param repository path of the folder that holds `figures-demo` and `src`
 */
export function figuresPlugin(repository: string): Plugin {
  return {
    name: 'overfoot:figures',
    resolveId: (id) => (id === VIRTUAL ? RESOLVED : null),
    async load(id) {
      if (id !== RESOLVED) return null
      const { figures, warnings, files } = await readFigures(repository)
      for (const file of files) this.addWatchFile(file)
      for (const line of warnings) this.warn(line)
      return `export const figures = ${JSON.stringify(figures)}`
    },
  }
}
