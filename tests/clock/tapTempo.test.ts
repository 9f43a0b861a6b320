import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { beatsSinceOne, noTaps, nudged, type Taps, type TapTempo, tapped, tapTempo } from '../../src/clock/tapTempo.ts'
import { seconds } from '../../src/units.ts'
import { near } from '../tools/near.ts'
import { seededNormal } from '../tools/seededNormal.ts'

const tap = (times: readonly number[], from: Taps = noTaps): Taps =>
  times.reduce((taps, at) => tapped(taps, seconds(at)), from)
const said = (times: readonly number[]): TapTempo => {
  const tempo = tapTempo(tap(times))
  if (tempo === null) throw new Error(`nothing is said of ${times.join(' ')}`)
  return tempo
}
/** Taps on these beats, of so many a minute, from second 10 on. */
const onBeats = (perMinute: number, beats: readonly number[]): number[] => beats.map((k) => 10 + (k * 60) / perMinute)
const upTo = (count: number): number[] => Array.from({ length: count }, (_, k) => k)
/** How far the even beats are from the true beat near `beat`, in beats; + = later. */
const outBy = (tempo: TapTempo, perMinute: number, beat: number): number =>
  beat - beatsSinceOne(tempo, seconds(10 + (beat * 60) / perMinute))

describe('tapTempo(taps): a metronome', () => {
  test('40 to 220 a minute, 3 to 40 taps: to 1e-9, and the one is the first tap', () => {
    for (let perMinute = 40; perMinute <= 220; perMinute++) {
      for (const taps of [3, 4, 8, 9, 10, 40]) {
        const { beatsPerMinute, secondsPerBeat, one } = said(onBeats(perMinute, upTo(taps)))
        near(beatsPerMinute, perMinute, 1e-9 * perMinute, 'beats a minute', taps)
        near(secondsPerBeat * beatsPerMinute, 60, 1e-9)
        near(one, 10, 1e-9, 'the one', perMinute, taps)
      }
    }
  })
  test('nothing is said before three taps', () => {
    expect([[], [1], [1, 1.5]].map((times) => tapTempo(tap(times)))).toEqual([null, null, null])
    expect(said([1, 1.5, 2]).beatsPerMinute).toBeCloseTo(120, 9)
  })
})

/*
 * How unevenly people tap: the deviation from the beat at intervals of 0.4 to 0.8 s is some 10–20 ms in musicians and 20–40 ms
 * in others (B. Repp, Psychon. Bull. Rev. 12:969–992, 2005; B. Repp and Y.-H. Su, ibid. 20:403–452, 2013; sizes from memory).
 */
describe('tapTempo(taps): people', () => {
  const RUNS = 1000
  const UNEVEN = 0.025
  const relative = (perMinute: number, count: number, deviation: number, runs = RUNS): number[] => {
    const normal = seededNormal(20261201 + perMinute + count)
    return Array.from({ length: runs }, () => {
      const times = onBeats(perMinute, upTo(count)).map((at) => at + deviation * normal())
      return Math.abs(said(times).beatsPerMinute / perMinute - 1)
    })
  }
  const root = (errors: readonly number[]): number =>
    Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length)
  const part = (errors: readonly number[], below: number): number =>
    errors.filter((error) => error < below).length / errors.length
  /** No unbiased estimate from normal taps has less (Cramér and Rao): the deviation of a straight line's slope. */
  const least = (perMinute: number, count: number): number =>
    (UNEVEN * Math.sqrt(12 / (count * (count ** 2 - 1)))) / (60 / perMinute)

  test.each([40, 60, 87, 104, 120, 160, 204, 220])(
    '25 ms, %s a minute: as exact as can be, but for a seventh',
    (perMinute) => {
      for (const count of [8, 9]) {
        const errors = relative(perMinute, count, UNEVEN)
        expect(root(errors)).toBeLessThan(1.15 * least(perMinute, count))
      }
    },
  )
  test('more than 9 taps: the last 9 say it', () => {
    for (const perMinute of [60, 204]) {
      expect(root(relative(perMinute, 16, UNEVEN, 300))).toBeLessThan(1.2 * least(perMinute, 9))
    }
  })
  test.each([
    [40, 1],
    [60, 0.995],
    [87, 0.97],
    [104, 0.94],
    [120, 0.9],
    [160, 0.8],
    [220, 0.64],
  ])('25 ms, 8 taps, %s a minute: within 1.5 per cent in a part of %s of the runs', (perMinute, wanted) => {
    expect(part(relative(perMinute, 8, UNEVEN), 0.015)).toBeGreaterThanOrEqual(wanted)
  })
  test('musicians (15 ms) are within 1.5 % after 9 taps in 19 of 20 runs up to 200 a minute', () => {
    for (const perMinute of [40, 87, 120, 174, 200]) {
      expect(part(relative(perMinute, 9, 0.015), 0.015)).toBeGreaterThan(0.95)
    }
  })
  test('a beat between taps: 25 ms of each tap, and the beats are within 20 ms (root mean square)', () => {
    const normal = seededNormal(5)
    for (const perMinute of [60, 104, 204]) {
      const errors = Array.from({ length: RUNS }, () => {
        const times = onBeats(perMinute, upTo(8)).map((at) => at + UNEVEN * normal())
        return (outBy(said(times), perMinute, 7) * 60) / perMinute
      })
      expect(root(errors)).toBeLessThan(0.02)
    }
  })
  test('nobody says the beat again to a free tapper: the clock wanders too (Wing and Kristofferson 1973: 20 and 10 ms)', () => {
    const normal = seededNormal(6)
    const errors = Array.from({ length: RUNS }, () => {
      let clock = 10
      const times = upTo(9).map(() => {
        clock += 0.5 + 0.02 * normal()
        return clock + 0.01 * normal()
      })
      return said(times).beatsPerMinute / 120 - 1
    })
    // The mean of 8 such intervals: √(8 × 20² + 2 × 10²) / 8 = 7.29 ms of 500.
    expect(root(errors)).toBeLessThan(1.25 * 0.01458)
  })
})

describe('tapTempo(taps): taps left out, too many and astray', () => {
  const all = upTo(12)
  test.each([[[3]], [[1]], [[10]], [[4, 5]], [[2, 6]], [[2, 5, 8]]])('beats %s missed', (missed) => {
    const beats = all.filter((beat) => !(missed as number[]).includes(beat))
    for (const perMinute of [62, 87, 120, 204]) {
      const tempo = said(onBeats(perMinute, beats))
      near(tempo.beatsPerMinute, perMinute, 1e-9 * perMinute)
      near(tempo.one, 10, 1e-9)
    }
  })
  test('one tap too many anywhere, at any part of the beat, moves the tempo by less than 1.5 %', () => {
    for (const perMinute of [50, 87, 120]) {
      for (let beat = 3; beat < 11; beat++) {
        for (const between of [0.2, 0.3, 0.5, 0.6, 0.75]) {
          const times = onBeats(
            perMinute,
            [...all, beat + between].sort((a, b) => a - b),
          )
          near(said(times).beatsPerMinute / perMinute, 1, 0.015, perMinute, beat, between)
          near(outBy(said(times), perMinute, 11), 0, 0.05, 'the beat', perMinute, beat, between)
        }
      }
    }
  })
  test('one tap astray, by a third of a beat to a half: the same', () => {
    for (let beat = 1; beat < 11; beat++) {
      for (const off of [-0.5, -0.34, 0.34, 0.4, 0.5]) {
        const times = onBeats(
          104,
          all.map((k) => (k === beat ? k + off : k)),
        )
        near(said(times).beatsPerMinute / 104, 1, 0.015, beat, off)
        near(outBy(said(times), 104, 11), 0, 0.05, 'the beat', beat, off)
      }
    }
  })
  test('a finger that bounces (two taps within 0.12 s) is one tap', () => {
    const times = onBeats(204, all)
    const twice = times.flatMap((at, k) => (k % 2 === 0 ? [at, at + 0.06] : [at]))
    expect(tap(twice)).toEqual(tap(times))
  })
  test('uneven taps, of which one in eight is left out: still the beat, and counted through', () => {
    const normal = seededNormal(9)
    for (let run = 0; run < 300; run++) {
      const beats = upTo(33).filter((k) => k % 8 !== 1 + (run % 7))
      const tempo = said(onBeats(104, beats).map((at) => at + 0.025 * normal()))
      near(tempo.beatsPerMinute / 104, 1, 0.04, 'run', run)
      near(outBy(tempo, 104, 32), 0, 0.2, 'beats lost, run', run)
    }
  })
})

describe('tapTempo(taps): changes', () => {
  test('a pause of more than 3 s begins anew: tempo, the one and the nudge', () => {
    const before = nudged(tap(onBeats(120, upTo(8))), 1)
    const last = before.times.at(-1) ?? 0
    expect(tapped(before, seconds(last + 3)).nudge).toBe(1)
    const after = tap([last + 3.01, last + 3.61], before)
    expect(tapTempo(after)).toBeNull()
    const tempo = tapTempo(tap([last + 4.21], after))
    expect(tempo?.beatsPerMinute).toBeCloseTo(100, 6)
    expect(tempo?.one).toBeCloseTo(last + 3.01, 6)
  })
  test('a clock that goes back begins anew', () => {
    expect(tap([5, 5.5, 6, 2])).toEqual(tap([2]))
  })
  test('the music speeds up, 100 to 120 in 20 beats: no more behind than half of the taps that are looked at', () => {
    const times: number[] = [10]
    const tempoAt = (beat: number) => 100 + beat
    for (let beat = 0; beat < 20; beat++) times.push((times.at(-1) ?? 0) + 60 / tempoAt(beat + 0.5))
    for (let count = 9; count <= 21; count++) {
      const tempo = said(times.slice(0, count))
      // The taps looked at are count − 9 … count − 1; their middle is at beat count − 5.
      near(tempo.beatsPerMinute / tempoAt(count - 5), 1, 0.005, count)
      near(beatsSinceOne(tempo, seconds(times[count - 1] as number)), count - 1, 0.1, 'the beat', count)
    }
  })
  test('another tempo is taken over within the taps that are looked at', () => {
    const first = onBeats(100, upTo(12))
    const last = first.at(-1) ?? 0
    expect(said([...first, ...upTo(9).map((k) => last + ((k + 1) * 60) / 140)]).beatsPerMinute).toBeCloseTo(140, 1)
  })
  test('half or twice as many taps: half or twice the tempo, when they are most of those looked at', () => {
    const first = onBeats(100, upTo(9))
    const last = first.at(-1) ?? 0
    for (const beats of [0.5, 2]) {
      const more = upTo(8).map((k) => last + (k + 1) * beats * 0.6)
      expect(said([...first, ...more]).beatsPerMinute).toBeCloseTo(100 / beats, 6)
    }
  })
  test('as many whole beats as double ones: those between were missed; one more, and it is the other tempo', () => {
    expect(said([1, 1.6, 2.2, 3.4, 4.6]).beatsPerMinute).toBeCloseTo(100, 6)
    expect(said([1, 1.6, 2.2, 3.4, 4.6, 5.8]).beatsPerMinute).toBeCloseTo(50, 6)
    expect(said([1, 1.3, 1.6, 2.2, 2.8]).beatsPerMinute).toBeCloseTo(200, 6)
    expect(said([1, 1.3, 1.6, 2.2, 2.8, 3.4]).beatsPerMinute).toBeCloseTo(100, 6)
  })
  test('who loses the beat and comes in again beside it: for four taps off by up to a twelfth, then all on the new beat', () => {
    for (const off of [0.32, 0.38, 0.45, 0.55, 0.62]) {
      const before = upTo(9)
      const after = upTo(9).map((k) => 9 + k + off)
      const errors = after.map(
        (_, k) => said(onBeats(100, [...before, ...after.slice(0, k + 1)])).beatsPerMinute / 100 - 1,
      )
      for (const error of errors) near(error, 0, 1 / 12, off)
      expect(errors.filter((error) => Math.abs(error) > 1e-9).length).toBeLessThanOrEqual(4)
      const beats = beatsSinceOne(said(onBeats(100, [...before, ...after])), seconds(10 + (17 + off) * 0.6))
      near(beats, Math.round(beats), 1e-9, off)
    }
  })
})

describe('nudged(taps, half beats)', () => {
  test('moves the one and not the tempo; there and back is where it was', () => {
    const taps = tap(onBeats(104, upTo(8)))
    const [plain, later] = [tapTempo(taps), tapTempo(nudged(taps, 1))]
    expect(later?.beatsPerMinute).toBe(plain?.beatsPerMinute)
    expect((later?.one ?? 0) - (plain?.one ?? 0)).toBeCloseTo(60 / 104 / 2, 9)
    expect(nudged(nudged(taps, 1), -1)).toEqual(taps)
  })
  test('stays while the run goes on', () => {
    const taps = tap(onBeats(104, upTo(30)).slice(8), nudged(tap(onBeats(104, upTo(8))), -1))
    expect(tapTempo(taps)?.one).toBeCloseTo(10 - 60 / 104 / 2, 6)
  })
})

describe('any taps at all', () => {
  const anyTaps = fc.array(fc.double({ min: 0.001, max: 4, noNaN: true }), { maxLength: 40 })
  test('never an answer that is not a number, and never more taps kept than are looked at', () => {
    fc.assert(
      fc.property(anyTaps, (gaps) => {
        let at = 0
        let taps = noTaps
        for (const gap of gaps) {
          at += gap
          taps = tapped(taps, seconds(at))
          if (taps.times.length > 9 || !Number.isInteger(taps.beatsBefore)) expect.fail(JSON.stringify(taps))
          const tempo = tapTempo(taps)
          if (tempo !== null && !(tempo.secondsPerBeat > 0 && Number.isFinite(tempo.one))) {
            expect.fail(`${tempo.secondsPerBeat} s a beat from ${tempo.one} s, of ${JSON.stringify(taps)}`)
          }
        }
      }),
      { numRuns: 1000, seed: 20261125 },
    )
  })
})
