import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { afterLoop, hold, type Ladder, newLadder, rungOf, speedsOf, up } from '../../src/session/ladder.ts'
import { ladderWords } from '../../src/words/ladderWords.ts'

const ladder = newLadder(dances.foxtrot, { from: 0.5, to: 1, steps: 6, loops: 4 })
const times = (count: number, from: Ladder, act: (ladder: Ladder) => Ladder): Ladder =>
  Array.from({ length: count }).reduce<Ladder>((now) => act(now), from)
const where = (now: Ladder): string => ladderWords.where(rungOf(now))

describe('ladderWords.where(rung)', () => {
  test('says speed and loop', () => {
    expect(where(ladder)).toBe('Speed 1 of 6: 50 %. Loop 1 of 4.')
    expect(where(times(9, ladder, afterLoop))).toBe('Speed 3 of 6: 70 %. Loop 2 of 4.')
  })
  test('held, waiting, at the last speed, and through', () => {
    expect(where(hold(ladder, true))).toBe('Speed 1 of 6: 50 %, held. Loop 1 of 4.')
    expect(where(times(4, { ...ladder, onTap: true }, afterLoop))).toBe(
      'Speed 1 of 6: 50 %. Loop 4 of 4. Press “Faster” to go up.',
    )
    expect(where(times(5, ladder, up))).toBe('Speed 6 of 6: 100 %. Loop 1 of 4.')
    expect(where(times(24, ladder, afterLoop))).toBe('Speed 6 of 6: 100 %. Through: it goes on at this speed.')
  })
  test('the button that is named is there', () => {
    expect(where(times(4, { ...ladder, onTap: true }, afterLoop))).toContain(`“${ladderWords.up}”`)
  })
})

describe('ladderWords: numbers', () => {
  test('one is not many', () => {
    expect([1, 2].map(ladderWords.loopsText)).toEqual(['1 loop', '2 loops'])
    expect([1, 6].map(ladderWords.stepsText)).toEqual(['1 speed', '6 speeds'])
  })
  test('the plan', () => {
    expect(ladderWords.plan(ladder)).toBe(
      'From 50 to 100 % in 6 speeds, 4 loops at each: 24 loops. 1 bar of counting in before each speed.',
    )
    expect(ladderWords.plan({ ...ladder, loops: 1 })).toBe(
      'From 50 to 100 % in 6 speeds, 1 loop at each: 6 loops. 1 bar of counting in before each speed.',
    )
    expect(ladderWords.plan({ ...ladder, steps: 1, loops: 1 })).toBe(
      'At 100 %: 1 loop. 1 bar of counting in before it.',
    )
  })
  test('the count-in is said before a speed only', () => {})
  test('what is remembered', () => {
    expect(ladderWords.remembered(rungOf(ladder))).toBe('')
    expect(ladderWords.remembered(rungOf(up(ladder)))).toBe('You have come to speed 2 of 6, 60 %.')
  })
})

test('ladderWords.caution(speed): below half tempo only, as usual advice, and the teacher has the last word', () => {
  expect([0.5, 0.7, 1].map(ladderWords.caution)).toEqual(['', '', ''])
  for (const said of ['half tempo', 'no swing', 'balance', 'usual advice', 'your teacher']) {
    expect(ladderWords.caution(0.49)).toContain(said)
  }
  // A ladder that begins at half tempo says nothing, also after rounding.
  expect(speedsOf(ladder).map(ladderWords.caution).join('')).toBe('')
})
test('ladderWords.cautions: floor, warm-up, volume, screen, pain', () => {
  const all = ladderWords.cautions.join(' ')
  for (const said of ['floor', 'warm up', 'sound low', 'screen while you travel', 'hurts']) expect(all).toContain(said)
})
