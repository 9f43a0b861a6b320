import * as v from 'valibot'
import { slipOf } from './carried.ts'
import { figureSchema, type WrittenFigure } from './figureSchema.ts'
import type { Finding } from './finding.ts'
import type { Path } from './readDocument.ts'

export type Shape = {
  /** Whole only where `isSound` says so: what depends on the sound parts can still be checked when others are not. */
  readonly written: WrittenFigure
  readonly findings: readonly Finding[]
  /** Whether nothing is wrong at the path, around it or inside it. */
  isSound(path: Path): boolean
  /** Whether something is wrong with this very value, parts apart. */
  isRefused(path: Path): boolean
}

const name = (path: Path): string => JSON.stringify(path)
const stems = (path: Path): string[] =>
  Array.from({ length: path.length + 1 }, (_, length) => name(path.slice(0, length)))

/** The values of a description against the schema. */
export function readShape(value: unknown): Shape {
  const result = v.safeParse(figureSchema, value)
  const findings = (result.issues ?? []).map((issue): Finding => {
    const { fault, at } = slipOf(issue)
    const path = (issue.path ?? []).map((step) => step.key as string | number)
    return at === undefined ? { fault, path } : { fault, path, place: { offset: at } }
  })
  const refused = new Set(findings.map(({ path }) => name(path)))
  const touched = new Set(findings.flatMap(({ path }) => stems(path)))
  return {
    written: result.output as WrittenFigure,
    findings,
    // Most descriptions are good ones.
    isSound: (path) =>
      findings.length === 0 || (!touched.has(name(path)) && !stems(path).some((stem) => refused.has(stem))),
    isRefused: (path) => refused.has(name(path)),
  }
}
