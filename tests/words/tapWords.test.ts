import { describe, expect, test } from 'vitest'
import { noTaps, tapped, tapTempo } from '../../src/clock/tapTempo.ts'
import { dances } from '../../src/dance/dances.ts'
import { seconds } from '../../src/units.ts'
import { tapWords } from '../../src/words/tapWords.ts'

const at = (beatsPerMinute: number) => ({ beatsPerMinute })

describe('tapWords.waiting(taps)', () => {
  test('how many are wanted; then that they are uneven', () => {
    expect([0, 1, 2, 3].map(tapWords.waiting)).toEqual([
      'Tap 3 times or more.',
      '2 more taps.',
      '1 more tap.',
      'Too uneven so far: go on tapping.',
    ])
  })
  test('as many as the clock wants', () => {
    let taps = noTaps
    for (let count = 1; count <= 3; count++) {
      taps = tapped(taps, seconds(count / 2))
      expect(tapTempo(taps) === null).toBe(tapWords.waiting(count).includes('more'))
    }
  })
})

describe('tapWords.tempo(tempo, dance)', () => {
  test('beats and bars, at most one decimal', () => {
    expect(tapWords.tempo(at(116), dances.foxtrot)).toBe('116 beats a minute: 29 bars.')
    expect(tapWords.tempo(at(87.04), dances.waltz)).toBe('87 beats a minute: 29 bars.')
    expect(tapWords.tempo(at(101.26), dances.rumba)).toBe('101.3 beats a minute: 25.3 bars.')
  })
  test('beyond what is played: what it is set to (20 and 125 % of 29 bars)', () => {
    expect(tapWords.tempo(at(200), dances.waltz)).toBe(
      '200 beats a minute: 66.7 bars. Waltz is played here at 5.8 to 36.3 bars, so it is set to 36.3.',
    )
    expect(tapWords.tempo(at(12), dances.waltz)).toContain('12 beats a minute: 4 bars.')
    expect(tapWords.tempo(at(12), dances.waltz)).toContain('so it is set to 5.8.')
  })
})

test('tapWords.perhaps(tempo, dance): every other beat, or the half beats', () => {
  expect(tapWords.perhaps(at(204), dances.quickstep)).toBe('')
  expect(tapWords.perhaps(at(102), dances.quickstep)).toBe('If you tapped every other beat: twice as fast.')
  expect(tapWords.perhaps(at(232), dances.foxtrot)).toBe('If you tapped the half beats: half as fast.')
  expect(tapWords.perhaps(at(30), dances.foxtrot)).toBe('')
})

test('tapWords.nudged(half beats)', () => {
  expect([0, 1, -1, 2, -3, 5].map(tapWords.nudged)).toEqual([
    '',
    '½ beat later than tapped',
    '½ beat earlier than tapped',
    '1 beat later than tapped',
    '1½ beats earlier than tapped',
    '2½ beats later than tapped',
  ])
})

test('tapWords.isAlong(along, playing, bars): whether it keeps to the music, and to what of it', () => {
  expect(tapWords.isAlong(false, true, true)).toContain('from its next bar on')
  expect(tapWords.isAlong(true, false, true)).toMatch(/^Waits: /)
  expect(tapWords.isAlong(true, true, true)).toMatch(/^Plays along\. Music/)
  expect(tapWords.isAlong(true, true, false)).toContain('keep the beat; their rounds are no whole bars')
})
