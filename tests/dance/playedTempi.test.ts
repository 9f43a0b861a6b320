import { describe, expect, test } from 'vitest'
import { beatsPerMinute } from '../../src/dance/beatsPerMinute.ts'
import type { DanceId } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { defaultTempo } from '../../src/dance/defaultTempo.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'

// Middles by hand from S1, DTV Turnier- und Sportordnung tempo table, state 05/2023 (exercise: own judgement);
// 20 % and 125 % of them by hand.
const middles: readonly (readonly [DanceId, number, number, number])[] = [
  ['waltz', 29, 5.8, 36.25],
  ['tango', 32, 6.4, 40],
  ['viennese waltz', 59, 11.8, 73.75],
  ['foxtrot', 29, 5.8, 36.25],
  ['quickstep', 51, 10.2, 63.75],
  ['samba', 51, 10.2, 63.75],
  ['cha-cha-cha', 31, 6.2, 38.75],
  ['rumba', 26, 5.2, 32.5],
  ['paso doble', 61, 12.2, 76.25],
  ['jive', 43, 8.6, 53.75],
  ['exercise', 15, 3, 18.75],
]

describe.each(middles)('%s', (id, middle, slowest, fastest) => {
  test(`defaultTempo is ${middle} bars a minute, with the source of the range`, () => {
    expect(defaultTempo(dances[id])).toEqual({ barsPerMinute: middle, source: dances[id].tempo.source })
  })

  test(`playedTempoRange is ${slowest} to ${fastest} bars a minute`, () => {
    expect(playedTempoRange(dances[id])).toEqual({ from: slowest, to: fastest })
  })
})

test('the free exercise is played at 60 beats a minute, one a second', () => {
  const { barsPerMinute } = defaultTempo(dances.exercise)
  expect(beatsPerMinute(dances.exercise, barsPerMinute)).toBe(60)
  expect(secondsPerBeat(dances.exercise, barsPerMinute)).toBe(1)
  expect(dances.exercise.tempo).toEqual({ from: 14, to: 16, source: { provenance: 'own judgement', text: '' } })
})

// S4: NDCA recommended tempi, American style, undated: rumba 32–36, above 125 % of the international 25–27.
test('every tempo a body prints can be played, but for the American style rumba', () => {
  const outOfReach = danceList.flatMap((dance) =>
    dance.otherTempi
      .filter(({ from, to }) => from < playedTempoRange(dance).from || to > playedTempoRange(dance).to)
      .map(({ from, to }) => `${dance.id} ${from}–${to}`),
  )
  expect(outOfReach).toEqual(['rumba 32–36'])
})

test('secondsPerBeat: half the tempo, twice the time', () => {
  for (const dance of danceList) {
    const { barsPerMinute } = defaultTempo(dance)
    expect(secondsPerBeat(dance, barsPerMinute / 2)).toBeCloseTo(2 * secondsPerBeat(dance, barsPerMinute), 12)
  }
})

test.each([0, -30, Number.NaN, Number.POSITIVE_INFINITY])('a tempo of %s bars a minute is refused', (tempo) => {
  expect(() => beatsPerMinute(dances.waltz, tempo)).toThrow(RangeError)
  expect(() => secondsPerBeat(dances.waltz, tempo)).toThrow(RangeError)
})
