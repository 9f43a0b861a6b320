import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import { sumOfValues, toBeat } from '../../src/units.ts'

const folder = new URL('../../figures-demo/', import.meta.url)
const files = readdirSync(folder).sort()

type Facts = readonly [dance: string, values: readonly number[], weights: readonly number[], bars: number]

/** What each demo is made of, typed out: the dance, the beat values, the weight of each action, the bars it fills. */
const facts: Readonly<Record<string, Facts>> = {
  '01-three-walks-slow-quick-quick': ['foxtrot', [2, 1, 1], [1, 1, 1], 1],
  '02-four-walks-forward': ['exercise', [1, 1, 1, 1], [1, 1, 1, 1], 1],
  '03-four-walks-back': ['exercise', [1, 1, 1, 1], [1, 1, 1, 1], 1],
  '04-two-slows': ['exercise', [2, 2], [1, 1], 1],
  '05-walk-and-tap': ['exercise', [1, 1, 1, 1], [1, 0, 1, 0], 1],
  '06-waltz-box': ['waltz', [1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 1, 1], 2],
  '07-waltz-chasse': ['waltz', [1, 0.5, 0.5, 1], [1, 1, 1, 1], 1],
  '08-rumba-basic': ['rumba', [1, 1, 2, 1, 1, 2], [1, 1, 1, 1, 1, 1], 2],
  '09-side-steps': ['exercise', [1, 1, 1, 1], [1, 1, 1, 1], 1],
  '10-chasse-split-early': ['waltz', [0.5, 0.5, 1, 1], [1, 1, 1, 1], 1],
  '11-chasse-split-late': ['waltz', [1, 1, 0.5, 0.5], [1, 1, 1, 1], 1],
  '12-quickstep-chasse': ['quickstep', [2, 1, 1, 2], [1, 1, 1, 1], 1.5],
  '13-waltz-natural-turn': ['waltz', [1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 1, 1], 2],
  '14-tango-travelling': ['tango', [1, 1, 2], [1, 1, 1], 1],
  '15-tango-struck': ['tango', [1, 1, 2], [1, 1, 1], 1],
  '16-rumba-side-check': ['rumba', [1, 1, 2, 1, 1, 2], [0.5, 1, 1, 0.5, 1, 1], 2],
  '17-cha-cha-basic': ['cha-cha-cha', [1, 1, 0.5, 0.5, 1, 1, 1, 0.5, 0.5, 1], [1, 1, 1, 0.5, 1, 1, 1, 1, 0.5, 1], 2],
  '18-samba-whisks': ['samba', [0.75, 0.25, 1, 0.75, 0.25, 1], [1, 0.5, 1, 1, 0.5, 1], 2],
  '19-jive-basic': ['jive', [1, 1, 0.75, 0.25, 1], [1, 1, 1, 0.5, 1], 1],
  '20-quickstep-lock': ['quickstep', [2, 1, 1, 2], [1, 1, 1, 1], 1.5],
  '21-waltz-spin-turn': ['waltz', [1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 1, 1], 2],
  '22-twelve-walks': ['foxtrot', [2, 2, 1, 1, 2, 2, 1, 1, 2, 2, 1, 1], [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], 4.5],
  '23-quick-run': ['quickstep', [1, 1, 1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 1, 1, 1, 1], 2],
  '24-quick-run-with-a-slow': ['quickstep', [1, 1, 1, 1, 2, 1, 1], [1, 1, 1, 1, 1, 1, 1], 2],
}

test('every file among the demos is a figure that is known here', () => {
  expect(files).toEqual(Object.keys(facts).map((name) => `${name}.figure.yaml`))
})

test.each(files)('%s parses with no warnings, fills the bars it should and says what to look for', (file) => {
  const result = parseFigure(readFileSync(new URL(file, folder), 'utf8'), file)
  expect(result).toMatchObject({ ok: true, warnings: [] })
  if (!result.ok) return
  const { figure } = result
  const [timing] = figure.timings
  const bars = toBeat(sumOfValues(timing.values)) / dances[figure.dance].beatsPerBar
  const weights = figure.actions.map(({ weight }) => weight)
  expect([figure.dance, timing.values.map(toBeat), weights, bars]).toEqual(facts[figure.id])
  // A figure that does not fill its bars says so (most of the quickstep's: student revision cards of IDTA Associate theory).
  if (!Number.isInteger(bars)) expect(figure.about).toMatch(/bar and a half/)
  expect(figure.about.length).toBeGreaterThan(20)
  expect(figure.about.length).toBeLessThan(200)
})

test('the course has at least sixteen figures, each timing of which fills the same time', () => {
  expect(files.length).toBeGreaterThanOrEqual(16)
  for (const file of files) {
    const result = parseFigure(readFileSync(new URL(file, folder), 'utf8'), file)
    const sums = result.ok ? result.figure.timings.map(({ values }) => sumOfValues(values)) : []
    expect(new Set(sums).size, file).toBe(1)
  }
})
