import { describe, expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import { slowTwoWays } from '../../src/scene/slowTwoWays.ts'
import { wayOf } from '../../src/transfer/faults.ts'
import type { WayKind } from '../../src/transfer/way.ts'
import { slowWords } from '../../src/words/slowWords.ts'

const shown = (id: DanceId, barsPerMinute: number, kind: WayKind = 'in time', convention = dances[id].convention) =>
  slowTwoWays(dances[id], convention, secondsPerBeat(dances[id], barsPerMinute), wayOf(kind))

const captions = (...asked: Parameters<typeof shown>) =>
  shown(...asked).steps.map((step) =>
    [slowWords.sized, slowWords.speed, slowWords.ofQuick, slowWords.still].map((say) => say(step)).join(', '),
  )

describe('slowWords: under the pictures', () => {
  // 30 bars of 4 beats a minute: half a second a beat, so 0.4 m in 0.5 s, 0.8 m in 1 s, 0.4 m in 1 s.
  test('foxtrot at 30 bars a minute', () => {
    expect(captions('foxtrot', 30)).toEqual([
      '40 cm in 1 beat, 0.80 metres a second, 100 %, no wait',
      '80 cm in 2 beats, 0.80 metres a second, 100 % of the quick’s speed, no wait',
      '40 cm in 2 beats, 0.40 metres a second, 50 % of the quick’s speed, no wait',
    ])
  })
  test('samba, whose slow is one beat', () => {
    expect(captions('samba', 60).map((text) => text.split(',')[0])).toEqual([
      '40 cm in ½ beat',
      '80 cm in 1 beat',
      '40 cm in 1 beat',
    ])
  })
  test('who is too soon on the foot is said to stand', () => {
    expect(shown('foxtrot', 30, 'early').steps.map(slowWords.still)).toEqual([
      'stands still ½ beat',
      'stands still 1 beat',
      'stands still 1 beat',
    ])
  })
})

test('slowWords.where(slow, asked, bars a minute)', () => {
  const where = (id: DanceId, bars: number) => slowWords.where(shown(id, bars), dances[id], bars)
  // 29 bars, the middle of the foxtrot's range, are 100 %.
  expect(where('foxtrot', 14.5)).toBe('Slow Foxtrot at 50 % of its tempo: 1.03 seconds a beat.')
  expect(where('waltz', 30)).toBe(
    'Waltz is counted in numbers, without slows and quicks. So this is a free exercise, at the same 0.67 seconds a beat.',
  )
  expect(slowWords.where(shown('tango', 30, 'in time', 'struck'), dances.tango, 30)).toBe(
    'In this figure steps are struck: the weight goes at once and then stands. So this is a free exercise, at the same 0.50 seconds a beat.',
  )
})

test('slowWords.intro says how much longer a slow is', () => {
  expect(slowWords.intro(shown('foxtrot', 30))).toContain('twice the time of a quick')
  expect(slowWords.intro({ ...shown('foxtrot', 30), ratio: 1.5 })).toContain('1½ times the time of a quick')
})

test('slowWords.picture(step) tells those who hear what the beads tell the eye', () => {
  expect(shown('foxtrot', 30).steps.map(slowWords.picture)).toEqual([
    'A quick, seen from above: right foot forward 40 cm in 1 beat. 3 beads, 20 cm ahead of each other.',
    'A slow: the same step, larger, seen from above: right foot forward 80 cm in 2 beats. 5 beads, 20 cm ahead of each other.',
    'A slow: the same size, slower, seen from above: right foot forward 40 cm in 2 beats. 5 beads, 10 cm ahead of each other.',
  ])
})

test('slowWords.caution: what slow practice cannot give, and who has the last word', () => {
  for (const said of ['half tempo', 'no swing', 'balance', 'placing and timing', 'usual advice', 'your teacher']) {
    expect(slowWords.caution).toContain(said)
  }
})
