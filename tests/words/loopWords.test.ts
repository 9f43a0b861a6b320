import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { canFollowItself } from '../../src/session/canFollowItself.ts'
import { loopRange } from '../../src/session/loopRange.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { loopWords } from '../../src/words/loopWords.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'

const quicks = walks('quickstep', [1, 1, 1, 1, 1, 1, 1, 1])

describe('loopWords.part(range, dance)', () => {
  const part = (from: number, to: number) => loopWords.part(loopRange(schedule(quicks), from, to), dances.quickstep)
  test('steps, what leads in, and how long a round is', () => {
    expect(part(4, 8)).toBe('Steps 5 to 8, led in by step 4. A round lasts 2 bars: 1 to dance, 1 to get ready.')
    expect(part(0, 4)).toBe('Steps 1 to 4. A round lasts 1 bar.')
    expect(part(2, 4)).toBe('Steps 3 and 4, led in by step 2. A round lasts 1 bar.')
    expect(part(2, 3)).toBe('Step 3, led in by step 2. A round lasts 3 beats.')
  })
})

describe('loopWords.joined(following, dance) and notJoined(why)', () => {
  const told = (part: string): string => {
    const figure = demos.find(({ id }) => id.includes(part))
    if (figure === undefined) throw new Error(`no demo ${part}`)
    const following = canFollowItself(figure)
    return following.can ? loopWords.joined(following, dances[figure.dance]) : loopWords.notJoined(following.why)
  }
  test('feet and bars', () => {
    expect(told('waltz-box')).toBe('The figure can follow itself: a round lasts 2 bars.')
    expect(told('jive-basic')).toBe(
      'The figure can follow itself: a round lasts 1 bar. Every second round begins with the other foot.',
    )
    expect(told('quickstep-chasse')).toBe(
      'The figure can follow itself: a round lasts 6 beats. After 2 rounds it begins on the count of the first one again.',
    )
  })
  test('why not', () => {
    expect(told('natural-turn')).toBe(
      'The figure cannot follow itself: it ends facing another way than it begins, so another figure follows there.',
    )
  })
})
