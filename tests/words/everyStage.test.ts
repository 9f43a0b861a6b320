import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { defaultTempo } from '../../src/dance/defaultTempo.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import type { Figure } from '../../src/figure/figure.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { behind, type Comparison } from '../../src/transfer/comparison.ts'
import { faults, wayOf } from '../../src/transfer/faults.ts'
import { perform } from '../../src/transfer/perform.ts'
import type { Way } from '../../src/transfer/way.ts'
import { chartRows } from '../../src/words/chartRows.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'

function danced(figure: Figure, way: Way): Comparison {
  const dance = dances[figure.dance]
  const scheduled = schedule(figure)
  const shortest = 0.42 / secondsPerBeat(dance, defaultTempo(dance).barsPerMinute)
  return {
    ...{ dance, schedule: scheduled, ideal: perform(scheduled, { kind: 'in time' }) },
    panels: [{ way, performance: perform(scheduled, way, shortest) }],
  }
}

const SAYS_WHEN = /^(late|early) by ([0-9]*[⅛¼⅜½⅝¾⅞]?) beats?: /
const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞']
function beatsSaid(stage: string): number {
  const [, side, much = ''] = SAYS_WHEN.exec(stage) ?? []
  if (side === undefined) return 0
  const [, whole = '', part = ''] = /^(\d*)(.?)$/.exec(much) ?? []
  return (side === 'late' ? 1 : -1) * (Number(whole) + EIGHTHS.indexOf(part) / 8)
}

describe('the stage in charts, of every demo at every eighth of a beat', () => {
  test.each(faults)('$kind: as late as it is, to a sixteenth, and one thing of what is so', ({ kind, of }) => {
    for (const figure of demos) {
      const comparison = danced(figure, wayOf(kind))
      const { performance } = comparison.panels[0] as Comparison['panels'][number]
      for (const { beat, stage, left, right, progress } of chartRows(comparison, 0, 0.125)) {
        const at = `${figure.id} at ${beat}: ${stage}`
        const late = of === 'dynamics' ? 0 : behind(performance, comparison.ideal, beat)
        expect(Math.abs(beatsSaid(stage) - late), at).toBeLessThanOrEqual(1 / 16 + 1e-9)
        const state = stage.replace(SAYS_WHEN, '')
        expect(state, at).toMatch(/^[a-z][^:]*(: [a-z][^:]*)?$/)
        // What is said of a foot holds of that foot.
        const [, foot] = /fully over the (left|right) foot/.exec(state) ?? []
        if (foot !== undefined) {
          expect(foot === 'left' ? left.load : right.load, at).toBeGreaterThan(0.999)
          expect(Number.isInteger(Math.round(progress * 1e6) / 1e6), at).toBe(true)
        }
        const [, down] = /(left|right) foot (?:placed|in its place)/.exec(state) ?? []
        if (down !== undefined) expect((down === 'left' ? left : right).onFloor, at).toBe(true)
      }
    }
  })
})

describe('the stage in charts: S Q Q, the foot without the body', () => {
  const sqq = walks('foxtrot', [2, 1, 1])
  const stages = (way: Way, every: number) =>
    new Map(chartRows(danced(sqq, way), 0, every).map(({ beat, stage }) => [beat, stage]))
  test('from its touch on the foot is down, and the body comes after', () => {
    // The slow’s foot is down at ⅜ of its time, on ¼; the body waits half a beat, and is half way before 1.
    const found = stages(wayOf('foot first'), 0.125)
    expect([0.125, 0.25, 0.5, 0.75, 0.875].map((beat) => found.get(beat))).toEqual([
      'moving, right foot on its way',
      'right foot placed without the body, which waits',
      'late by ¼ beat: right foot placed without the body, which waits',
      'late by ½ beat: right foot placed without the body, which waits',
      'late by ⅜ beat: right foot placed, the body follows',
    ])
  })
  test.each(['swelling', 'arrested'] as const)('%s is neither late nor early', (kind) => {
    for (const stage of stages(wayOf(kind), 0.125).values()) expect(stage).not.toMatch(/late|early/)
  })
})
