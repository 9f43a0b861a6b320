import { expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import type { Figure } from '../../src/figure/figure.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { faults, wayOf } from '../../src/transfer/faults.ts'
import { perform } from '../../src/transfer/perform.ts'
import { chartRows } from '../../src/words/chartRows.ts'
import { performanceWords } from '../../src/words/performanceWords.ts'
import { wayName } from '../../src/words/wayName.ts'
import { demos } from '../tools/demos.ts'
import { SHORTEST, shortestAt } from '../tools/shortestAt.ts'

const HALF = 0.5
const fixed = (value: number): string => (Number(value.toFixed(3)) + 0).toFixed(3).padStart(7)

/** What a change of a rule or of its words does is seen in a diff: each fault as it usually is, on the demo it is shown on. */
test('faults: what is said of each on its own demo, half beat by half beat, at the dance’s own tempo and 0.42 s', async () => {
  const parts = faults.map(({ kind, demo }) => {
    const figure = demos.find(({ id }) => id.startsWith(demo)) as Figure
    const scheduled = schedule(figure)
    const dance = dances[figure.dance]
    const way = wayOf(kind)
    const performance = perform(scheduled, way, shortestAt(dance, SHORTEST[0]))
    const ideal = perform(scheduled, { kind: 'in time' })
    const comparison = { dance, schedule: scheduled, ideal, panels: [{ way, performance }] }
    const rows = chartRows(comparison, 0, HALF).map(
      ({ beat, bar, count, progress, stage }) =>
        `${fixed(beat)}  ${String(bar).padStart(3)} ${count.padEnd(2)} ${fixed(progress)}  ${stage}`,
    )
    const head = `${kind}: ${wayName(way)}\n${figure.title}, ${scheduled.timing.text}`
    return [head, performanceWords(comparison, 0), '   beat  bar count progress', ...rows].join('\n')
  })
  await expect(`${parts.join('\n\n')}\n`).toMatchFileSnapshot('faults.txt')
})
