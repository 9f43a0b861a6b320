import { describe, expect, test } from 'vitest'
import type { Counting } from '../../src/dance/dance.ts'
import { danceList } from '../../src/dance/dances.ts'
import { countInTicks } from '../../src/sound/countInTicks.ts'
import type { TickChoices } from '../../src/sound/ticksOf.ts'
import { wordFor } from '../../src/sound/wordFor.ts'
import { countInFrom } from '../../src/timing/countIn.ts'
import { countNow } from '../../src/words/countWords.ts'
import { ALL_CLICKS, walksLesson } from '../tools/soundedLesson.ts'

const COUNTINGS: readonly Counting[] = ['slows and quicks', 'bars and beats', 'half beats']
const waltz = walksLesson('waltz', [1, 1, 1])
/** "-3 bar one · -2.5 half -", in beats of the figure. */
const heard = (
  choices: Partial<TickChoices>,
  lesson = waltz,
  from: number = countInFrom(lesson.schedule, 0, 1),
): string =>
  countInTicks(lesson, from, { ...ALL_CLICKS, count: 'counting', ...choices })
    .map(({ at, click, say }) => `${from + at} ${click ?? '-'} ${say ?? '-'}`)
    .join(' · ')

describe('countInTicks(lesson, from, choices)', () => {
  test('a bar of waltz, up to the half beat on which the foot leaves', () => {
    expect(waltz.range.from).toBe(-0.5)
    expect(heard({})).toBe('-3 bar one · -2.5 half and · -2 beat two · -1.5 half and · -1 beat three')
    expect(heard({ ands: false, halves: false })).toBe('-3 bar one · -2 beat two · -1 beat three')
  })
  test('in slows and quicks and in bars and beats the beats alone, by their numbers; so where only the steps are said', () => {
    for (const counting of ['slows and quicks', 'bars and beats'] as const)
      expect(heard({ counting })).toBe('-3 bar one · -2.5 half - · -2 beat two · -1.5 half - · -1 beat three')
    expect(heard({ count: 'steps' })).toBe('-3 bar one · -2.5 half - · -2 beat two · -1.5 half - · -1 beat three')
  })
  test('what is off is not heard', () => {
    expect(heard({ count: 'off', beats: false, halves: false })).toBe('-3 bar -')
    expect(heard({ count: 'off', bar: false, beats: false, halves: false })).toBe('')
  })
  test('rumba begins on 2: a bar, and its one', () => {
    const rumba = walksLesson('rumba', [1, 1, 2])
    expect(heard({ halves: false, counting: 'bars and beats' }, rumba)).toBe(
      '-5 bar one · -4 beat two · -3 beat three · -2 beat four',
    )
    // Its first action leaves on the beat before: that one is the round's.
    expect(rumba.range.from).toBe(-1)
  })
  test('from the middle of a beat on, as after a change of tempo: what is still to come', () => {
    expect(heard({ halves: false, counting: 'bars and beats' }, waltz, -2.37)).toBe('-2 beat two · -1 beat three')
  })
  test.each(danceList.map(({ id }) => id))('%s: what is said is what the screen shows, on every half beat', (dance) => {
    for (const counting of COUNTINGS)
      for (const bars of [1, 2]) {
        const lesson = walksLesson(dance, [1, 1, 1, 1])
        const from = countInFrom(lesson.schedule, 0, bars)
        const ticks = countInTicks(lesson, from, { ...ALL_CLICKS, counting, count: 'counting' })
        expect(ticks.length).toBeGreaterThanOrEqual(bars * 2)
        for (const { at, say } of ticks) {
          const shown = countNow(lesson, counting, from + at)
          // A half under a beat that is still counted is not said.
          const counts = shown.called || counting === 'half beats'
          expect(say).toBe(counts ? wordFor(shown.text) : null)
        }
        // No beat is left out.
        const beats = ticks.filter(({ click }) => click !== 'half').length
        expect(beats).toBe(Math.ceil(lesson.range.from - from - 1e-9))
      }
  })
})
