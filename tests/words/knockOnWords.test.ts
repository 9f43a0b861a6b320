import { describe, expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { knockOnChart, turningTempo } from '../../src/transfer/knockOn.ts'
import { shortestTimes } from '../../src/transfer/shortestTimes.ts'
import { beat } from '../../src/units.ts'
import { knockOnWords } from '../../src/words/knockOnWords.ts'
import { walks } from '../tools/exampleFigure.ts'

/** The tempi at which a dance is played, in beats a minute. */
function played(dance: DanceId) {
  const { from, to } = playedTempoRange(dances[dance])
  return { from: from * dances[dance].beatsPerBar, to: to * dances[dance].beatsPerBar }
}

function turning(dance: DanceId, values: readonly number[], { at = 0, by = 0.5, tempi = played(dance) } = {}): string {
  const plan = schedule(walks(dance, values))
  const slip = { at, by: beat(by) }
  return knockOnWords.turning(plan, slip, turningTempo(plan, slip, shortestTimes.comfortable, tempi))
}

// The tempi follow from 0.42 s by arithmetic: see the tests of turningTempo.
describe('knockOnWords.turning(schedule, slip, turningTempo): up to which tempo a slip is made up for', () => {
  test('by the step itself, then by others, then by none', () => {
    expect(turning('quickstep', [1, 1, 1, 1, 2, 1, 1])).toBe(
      'Up to 71 beats a minute (17.8 bars) the step itself makes up for it; up to 214 (53.5 bars), step 5 at the latest; ' +
        'faster, every step to the end stays late.',
    )
  })
  test('by others at every tempo that there is', () => {
    expect(turning('waltz', [1, 2, 1])).toBe(
      'Up to 71 beats a minute (23.8 bars) the step itself makes up for it; up to 108 (36.2 bars), step 2 at the latest.',
    )
  })
  test('by the step itself or by none: a slow with quicks after it, and the last step of all', () => {
    expect(turning('quickstep', [2, 1, 1])).toBe(
      'Up to 214 beats a minute (53.5 bars) the step itself makes up for it; faster, every step to the end stays late.',
    )
    expect(turning('quickstep', [1, 1], { at: 1 })).toBe(
      'Up to 71 beats a minute (17.8 bars) the step itself makes up for it; faster, it stays late.',
    )
  })
  test('never by the step itself: half a beat late in half a beat', () => {
    expect(turning('quickstep', [0.5, 1, 1, 1], { at: 0 })).toBe(
      'Up to 119 beats a minute (29.7 bars) step 4 at the latest makes up for it; faster, every step to the end stays late.',
    )
    expect(turning('waltz', [0.5, 2, 1])).toBe(
      'From 18 to 108 beats a minute (5.8 to 36.2 bars) step 2 at the latest makes up for it.',
    )
  })
  test('always, and never', () => {
    expect(turning('waltz', [2, 1])).toBe(
      'From 18 to 108 beats a minute (5.8 to 36.2 bars) the step itself makes up for it.',
    )
    const tempi = { from: 200, to: 208 }
    expect(turning('quickstep', [1, 1, 1], { tempi })).toBe(
      'From 200 to 208 beats a minute (50 to 52 bars) every step to the end stays late.',
    )
    expect(turning('quickstep', [1, 1, 1], { at: 2, tempi })).toBe(
      'From 200 to 208 beats a minute (50 to 52 bars) it stays late.',
    )
  })
  test('in tenths where two tempi would read the same; in ones for one bar', () => {
    expect(turning('quickstep', [1.5, 1], { by: 0.502 })).toBe(
      'Up to 142.5 beats a minute (35.6 bars) the step itself makes up for it; up to 142.7 (35.6 bars), step 2 at the latest; ' +
        'faster, every step to the end stays late.',
    )
    expect(turning('waltz', [2, 1], { tempi: { from: 1, to: 3 } })).toBe(
      'From 1 to 3 beats a minute (0.4 to 1 bar) the step itself makes up for it.',
    )
  })
})

function now(
  values: readonly number[],
  tempo: number,
  { at = 0, by = 0.5, shortest = shortestTimes.comfortable } = {},
): string {
  const plan = schedule(walks('quickstep', values))
  const slip = { at, by: beat(by) }
  const [row] = knockOnChart(plan, slip, shortest, [tempo])
  return knockOnWords.now(plan, slip, row!)
}
const eight = [1, 1, 1, 1, 1, 1, 1, 1]

describe('knockOnWords.now(schedule, slip, at a tempo)', () => {
  test.each([
    ['all late alike', now(eight, 200), 'At 200 beats a minute (50 bars): steps 1 to 8 late, ½ beat each.'],
    [
      'less and less late',
      now(eight, 140),
      'At 140 beats a minute (35 bars): steps 1 to 8 late, from ½ beat down to ⅜ beat.',
    ],
    [
      'hardly any more',
      now(eight, 134),
      'At 134 beats a minute (33.5 bars): steps 1 to 8 late, from ½ beat down to less than ⅛ beat.',
    ],
    ['two of them', now(eight, 200, { at: 6 }), 'At 200 beats a minute (50 bars): steps 7 and 8 late, ½ beat each.'],
    ['the last', now(eight, 200, { at: 7 }), 'At 200 beats a minute (50 bars): step 8 late by ½ beat.'],
    ['one, then in time', now(eight, 100), 'At 100 beats a minute (25 bars): late on step 1, then in time.'],
    ['two, then in time', now(eight, 112), 'At 112 beats a minute (28 bars): late on steps 1 and 2, then in time.'],
    ['more', now([1, 1, 1, 1, 2, 1], 204), 'At 204 beats a minute (51 bars): late on steps 1 to 4, then in time.'],
    [
      'the step itself',
      now(eight, 60, { at: 2 }),
      'At 60 beats a minute (15 bars): step 3 begins ½ beat late and is in time at its end.',
    ],
    ['no slip', now(eight, 200, { by: 0 }), 'At 200 beats a minute (50 bars): every step in time.'],
    [
      'a quicker dancer',
      now(eight, 200, { shortest: shortestTimes.quickest }),
      'At 200 beats a minute (50 bars): late on steps 1 and 2, then in time.',
    ],
    [
      'more than a beat in all, at one bar a minute',
      now([1, 1], 4, { by: 1 }),
      'At 4 beats a minute (1 bar): late on step 1, then in time.',
    ],
  ])('%s', (_, said, expected) => {
    expect(said).toBe(expected)
  })
})
