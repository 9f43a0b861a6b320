import { readdirSync, readFileSync } from 'node:fs'
import type { Figure } from '../../src/figure/figure.ts'
import { parseFigure } from '../../src/figure/parse.ts'

const FOLDER = new URL('../../figures-demo/', import.meta.url)

/** The demo figures by file name, read by the program's own parser. */
export const demos: readonly Figure[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.figure.yaml'))
  .sort()
  .map((name) => {
    const result = parseFigure(readFileSync(new URL(name, FOLDER), 'utf8'), name)
    if (!result.ok) throw new Error(`${name}: ${result.problems.map(({ code }) => code).join(', ')}`)
    return result.figure
  })
