import { describe, expect, test } from 'vitest'
import { readAs, type SteadyBeat, steadyTempo } from '../../src/clock/steadyTempo.ts'
import { noTaps, nudged, type Taps, type TapTempo, tapped, tapTempo } from '../../src/clock/tapTempo.ts'
import { seconds } from '../../src/units.ts'
import { near } from '../tools/near.ts'
import { seededNormal } from '../tools/seededNormal.ts'

const UNEVEN = 0.025
const upTo = (count: number): number[] => Array.from({ length: count }, (_, k) => k)
const root = (errors: readonly number[]): number => Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length)

/** Taps on these beats, one run after another; what is said after each tap. */
function followed(beats: readonly number[], lasts: number, normal: () => number): TapTempo[] {
  let [taps, steady]: [Taps, SteadyBeat | null] = [noTaps, null]
  return beats.flatMap((beat) => {
    taps = tapped(taps, seconds(10 + beat * lasts + UNEVEN * normal()))
    const said = steadyTempo(steady, taps)
    if (said !== null) steady = said.steady
    return said?.tempo ?? []
  })
}
/** How far the next beats are from the music's, in seconds, so many beats after the last tap. */
const outAfter = (tempo: TapTempo, lasts: number, beat: number): number => {
  const beats = (10 + beat * lasts - tempo.one) / tempo.secondsPerBeat
  return (beats - Math.round(beats)) * tempo.secondsPerBeat
}

describe('steadyTempo(before, taps): music that goes on evenly, 25 ms each tap', () => {
  test('32 taps at 120: after another 60 beats within 60 ms (rms); of the last nine alone it is more than 100', () => {
    const normal = seededNormal(20261127)
    const runs = upTo(60).map(() => {
      const beats = upTo(32)
      const [tempo] = followed(beats, 0.5, normal).slice(-1)
      if (tempo === undefined) throw new Error('nothing is said')
      const alone = tapTempo(
        [...beats].reduce((taps, beat) => tapped(taps, seconds(10 + beat * 0.5 + UNEVEN * normal())), noTaps),
      )
      if (alone === null) throw new Error('nothing is said')
      return [outAfter(tempo, 0.5, 31 + 60), outAfter(alone, 0.5, 31 + 60)] as const
    })
    expect(root(runs.map(([steady]) => steady))).toBeLessThan(0.06)
    expect(root(runs.map(([, alone]) => alone))).toBeGreaterThan(0.1)
  })
  test('five taps again after 12 beats: the tempo to 0.4 % in 9 of 10 runs; of nine taps alone it is less than half of them', () => {
    const normal = seededNormal(7)
    const errors = upTo(300).map(() => {
      const said = followed([...upTo(9), ...upTo(5).map((k) => 20 + k)], 0.5, normal)
      return [said.at(-1), said[6]].map((tempo) => Math.abs((tempo?.secondsPerBeat ?? 0) / 0.5 - 1))
    })
    const within = (which: 0 | 1) => errors.filter((error) => (error[which] ?? 1) < 0.004).length / errors.length
    expect(within(0)).toBeGreaterThan(0.9)
    expect(within(1)).toBeLessThan(0.5)
  })
  test('other music is taken up at once: another tempo, or beats elsewhere', () => {
    const none = () => 0
    const first = followed(upTo(9), 0.5, none)
    near(first.at(-1)?.secondsPerBeat, 0.5, 1e-9)
    let [taps, steady]: [Taps, SteadyBeat | null] = [noTaps, { at: 10, secondsPerBeat: 0.5, taps: 9 }]
    for (const at of [30.2, 30.8, 31.4, 32, 32.6]) {
      taps = tapped(taps, seconds(at))
      const said = steadyTempo(steady, taps)
      if (said === null) continue
      steady = said.steady
      near(said.tempo.secondsPerBeat, 0.6, 1e-9)
      near((said.tempo.one - 30.2) / 0.6, 0, 1e-9)
    }
    near(steady?.secondsPerBeat, 0.6, 1e-9)
    const beside = steadyTempo(
      { at: 10, secondsPerBeat: 0.5, taps: 9 },
      [30.2, 30.7, 31.2, 31.7, 32.2].map(seconds).reduce(tapped, noTaps),
    )
    near(beside?.tempo.one, 30.2, 1e-9)
  })
  test('even taps: the one is the first tap, moved by the nudge', () => {
    const taps = [30, 30.5, 31, 31.5, 32].map(seconds).reduce(tapped, noTaps)
    const said = steadyTempo({ at: 10, secondsPerBeat: 0.502, taps: 9 }, nudged(taps, -3))
    near(said?.tempo.secondsPerBeat, 0.5, 1e-9)
    near(said?.tempo.one, 30 - 0.75, 1e-9)
  })
})

describe('readAs(tempo, times, nudge)', () => {
  test.each([2, 0.5])('%s times as quick, the one where it was; a nudge is by half of that beat', (times) => {
    const taps = [30, 30.5, 31, 31.5].map(seconds).reduce(tapped, noTaps)
    for (const nudge of [0, 1, -2]) {
      const tempo = tapTempo(nudged(taps, nudge))
      if (tempo === null) throw new Error('nothing is said')
      const read = readAs(tempo, times, nudge)
      near(read.secondsPerBeat, 0.5 / times, 1e-9)
      near(read.beatsPerMinute, 120 * times, 1e-9)
      near(read.one, 30 + (nudge / 2) * (0.5 / times), 1e-9)
    }
  })
})
