import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { perform } from '../../src/transfer/perform.ts'
import { type ChartFoot, chartRows } from '../../src/words/chartRows.ts'
import { demos } from '../tools/demos.ts'

const QUARTER = 0.25
const fixed = (value: number): string => (Number(value.toFixed(3)) + 0).toFixed(3).padStart(9)
const foot = ({ x, y, heading, load, onFloor }: ChartFoot): string =>
  `${fixed(x)}${fixed(y)}${fixed(heading)}${fixed(load)} ${onFloor ? 'down' : 'up  '}`
const HEAD =
  '     beat  progress | left: x, y m, heading deg, load              | right                                     | weight'

/** What a change of timing or pose does to every demo is seen in a diff. */
describe('chartRows(demo in time, quarter beats)', () => {
  test.each(demos.map((figure) => [figure.id, figure] as const))('%s', async (id, figure) => {
    const parts = figure.timings.map((timing, index) => {
      const scheduled = schedule(figure, index)
      const ideal = perform(scheduled, { kind: 'in time' })
      const panels = [{ way: { kind: 'in time' as const }, performance: ideal }]
      const rows = chartRows({ dance: dances[figure.dance], schedule: scheduled, ideal, panels }, 0, QUARTER)
      const lines = rows.map(
        ({ beat, progress, left, right, weight }) =>
          `${fixed(beat)} ${fixed(progress)} |${foot(left)} |${foot(right)} |${fixed(weight.x)}${fixed(weight.y)}`,
      )
      return [timing.text, HEAD, ...lines].join('\n')
    })
    await expect(`${parts.join('\n\n')}\n`).toMatchFileSnapshot(`poses/${id}.txt`)
  })

  test('no snapshot is flat: somebody’s weight goes over half a step or more', () => {
    for (const figure of demos) {
      const scheduled = schedule(figure)
      const ideal = perform(scheduled, { kind: 'in time' })
      const panels = [{ way: { kind: 'in time' as const }, performance: ideal }]
      const rows = chartRows({ dance: dances[figure.dance], schedule: scheduled, ideal, panels }, 0, QUARTER)
      const places = rows.map(({ weight }) =>
        Math.hypot(weight.x - (rows[0]?.weight.x ?? 0), weight.y - (rows[0]?.weight.y ?? 0)),
      )
      expect(Math.max(...places), figure.id).toBeGreaterThan(0.2)
    }
  })
})
