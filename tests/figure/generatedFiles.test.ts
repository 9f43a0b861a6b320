import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { parseFigure } from '../../src/figure/parse.ts'
import { readDocument } from '../../src/figure/readDocument.ts'
import { writeFigure } from '../../src/figure/writeFigure.ts'
import { generatedDescription } from '../tools/generateDescription.ts'
import { mutatedText } from '../tools/mutateText.ts'
import { cases } from './problemTable.ts'

/** 10,000 in the suite; `npm run soak` sets ten times as many. */
const FILES = Number(process.env.OVERFOOT_FILES ?? 10_000)
const SEED = 20261125
/** Times are for the soak only: they depend on the machine. */
const timed = process.env.OVERFOOT_FILES !== undefined
const MINUTES = 60_000 * Math.max(1, FILES / 10_000)

/** How many values, and how deep, a description's text has turned into. */
function work(value: unknown, depth = 0): { nodes: number; depth: number } {
  if (typeof value !== 'object' || value === null) return { nodes: 1, depth }
  const inner = Object.values(value).map((one) => work(one, depth + 1))
  return {
    nodes: inner.reduce((sum, { nodes }) => sum + nodes, 1),
    depth: Math.max(depth, ...inner.map((one) => one.depth)),
  }
}

test(`${FILES} generated files: a located list of problems, or a correct figure`, { timeout: MINUTES }, () => {
  let [valid, run] = [0, 0]
  const times: number[] = []
  const inside = (text: string, line: number, column: number): boolean => {
    const lines = text.split(/\r\n|[\n\r]/)
    return line >= 1 && line <= lines.length && column >= 1 && column <= (lines[line - 1] ?? '').length + 1
  }
  const style = fc.record({
    crlf: fc.boolean(),
    remark: fc.boolean(),
    unknown: fc.boolean(),
    spoilt: fc.integer({ min: 0, max: 2 }),
  })
  fc.assert(
    fc.property(
      fc.tuple(generatedDescription, style).chain(([figure, how]) => {
        const text = writeFigure(figure)
        const written = how.spoilt < 2 ? fc.constant(text) : mutatedText(text)
        return fc.tuple(fc.constant(figure), fc.constant(how), written)
      }),
      ([figure, { crlf, remark, unknown, spoilt }, written]) => {
        run++
        const good = spoilt < 2
        let now = written
        if (remark) now = `# a remark\n${now}`
        if (unknown && good) now += 'colour: red\n'
        if (crlf) now = now.replace(/\n/g, '\r\n')
        const time = (): number => {
          const started = performance.now()
          parseFigure(now, 'made.figure.yaml')
          return performance.now() - started
        }
        const result = parseFigure(now, 'made.figure.yaml')
        // Not the first ones, while the engine still learns the code; and of a slow one the quickest of a few: what is
        // left is the file's own cost, not the collector's or the machine's.
        if (timed && run > 500) {
          const first = time()
          times.push(first < 5 ? first : Math.min(first, time(), time(), time()))
        }
        const problems = result.ok ? result.warnings : result.problems
        for (const { code, where } of problems) {
          if (!inside(now, where.line, where.column)) expect.fail(`${code} at ${where.line}:${where.column} of\n${now}`)
          if (!Object.hasOwn(cases, code)) expect.fail(`${code} is in no table`)
        }
        if (!result.ok && !problems.some(({ severity }) => severity === 'error'))
          expect.fail(`refused for nothing:\n${now}`)
        if (good) {
          valid++
          if (!result.ok) expect.fail(JSON.stringify(result.problems, null, 1) + now)
          const model = { ...figure, about: figure.about.trim() }
          // Node's own comparison is the stricter one, and quicker; the other one says what differs.
          if (!isDeepStrictEqual(result.figure, model)) expect(result.figure).toEqual(model)
          const unknowns = problems.filter(({ code }) => code === 'key-unknown')
          if (unknowns.length !== (unknown ? 1 : 0)) expect.fail(`${unknowns.length} unknown keys in\n${now}`)
        }
        // A good text has turned into its model, and into no more.
        const { description } = good ? { description: null } : readDocument(now)
        if (description !== null) {
          const { nodes, depth } = work(description.value)
          // A value needs two characters at the least; the deepest description has four levels, the reader allows ten.
          if (nodes > now.length + 1 || depth > 30) expect.fail(`${nodes} values, ${depth} deep, of\n${now}`)
        }
        if (({} as Record<string, unknown>).x !== undefined) expect.fail(`every object has an x after\n${now}`)
      },
    ),
    { numRuns: FILES, seed: SEED },
  )
  expect(run).toBeGreaterThanOrEqual(FILES)
  expect(valid / run).toBeGreaterThanOrEqual(0.3)
  if (timed) {
    const sorted = times.toSorted((a, b) => a - b)
    const [median, slowest] = [sorted[Math.floor(sorted.length / 2)] ?? 1, sorted.at(-1) ?? 0]
    console.log(
      `slowest file ${slowest.toFixed(2)} ms, median ${median.toFixed(2)} ms: ${(slowest / median).toFixed(1)} ×`,
    )
    expect(slowest / median).toBeLessThanOrEqual(20)
  }
})
