import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import { sumOfValues, toBeat } from '../../src/units.ts'

const folder = new URL('../../figures-demo/', import.meta.url)
const files = readdirSync(folder).sort()

/** What each demo is made of, typed out: the dance, the beat values, the weight of each action. */
const facts: Readonly<Record<string, readonly [dance: string, values: readonly number[], weights: readonly number[]]>> =
  {
    '01-three-walks-slow-quick-quick': ['foxtrot', [2, 1, 1], [1, 1, 1]],
    '02-four-walks-forward': ['exercise', [1, 1, 1, 1], [1, 1, 1, 1]],
    '03-four-walks-back': ['exercise', [1, 1, 1, 1], [1, 1, 1, 1]],
    '04-two-slows': ['exercise', [2, 2], [1, 1]],
    '05-walk-and-tap': ['exercise', [1, 1, 1, 1], [1, 0, 1, 0]],
    '06-waltz-box': ['waltz', [1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 1, 1]],
    '07-waltz-chasse': ['waltz', [1, 0.5, 0.5, 1], [1, 1, 1, 1]],
    '08-rumba-basic': ['rumba', [1, 1, 2, 1, 1, 2], [1, 1, 1, 1, 1, 1]],
  }

test('every file among the demos is a figure that is known here', () => {
  expect(files).toEqual(Object.keys(facts).map((name) => `${name}.figure.yaml`))
})

test.each(files)('%s parses with no warnings, fills whole bars and says what to look for', (file) => {
  const result = parseFigure(readFileSync(new URL(file, folder), 'utf8'), file)
  expect(result).toMatchObject({ ok: true, warnings: [] })
  if (!result.ok) return
  const { figure } = result
  const [timing] = figure.timings
  expect([figure.dance, timing.values.map(toBeat), figure.actions.map(({ weight }) => weight)]).toEqual(
    facts[figure.id],
  )
  expect(toBeat(sumOfValues(timing.values)) % dances[figure.dance].beatsPerBar).toBe(0)
  expect(figure.about.length).toBeGreaterThan(20)
  expect(figure.about.length).toBeLessThan(200)
})
