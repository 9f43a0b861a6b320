import { expect, test } from 'vitest'
import { tapDelay, WANTED_TAPS } from '../../src/clock/tapDelay.ts'
import { delayWords } from '../../src/words/delayWords.ts'

test('delayWords: what is wanted, what was found, and what it can be set to', () => {
  const wanted = tapDelay([], 1, 0)
  expect(wanted.kind === 'more' && delayWords.more(wanted.taps)).toBe(`${WANTED_TAPS} more taps.`)
  expect(delayWords.more(1)).toBe('1 more tap.')
  expect(delayWords.found(0.18, 0.0204)).toBe('By your taps the sound is about 180 ms late. Your taps: even to 20 ms.')
  expect(delayWords.found(0, 0)).toBe('By your taps the sound is not late. Your taps: even to 1 ms.')
  expect([delayWords.set(0.18), delayWords.most(0.4)]).toEqual(['Set to 180 ms', 'More than 400 ms cannot be set.'])
  expect(delayWords.intro(60)).toContain('60 beats a minute')
})
