import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { curveThrough } from '../../src/transfer/curve.ts'
import { smoothness } from '../../src/transfer/smoothness.ts'
import { THOUSAND } from '../tools/generateFigure.ts'

type Profile = (t: number) => number

/** Speed of the minimum-jerk movement (T. Flash, N. Hogan, J. Neuroscience 5(7):1688–1703, 1985): way 1 in the time 1. */
const minimumJerk: Profile = (t) => (t <= 0 || t >= 1 ? 0 : 30 * t ** 2 * (1 - t) ** 2)
/** `count` minimum-jerk movements of `each` seconds with stops of `pause` seconds between them. */
const moves =
  (count: number, each: number, pause: number): Profile =>
  (t) =>
    Array.from({ length: count }, (_, k) => minimumJerk((t - k * (each + pause)) / each)).reduce((a, b) => a + b)
const trapezium: Profile = (t) => Math.max(0, Math.min(1, t / 0.1, (1 - t) / 0.1))
const halfSine: Profile = (t) => Math.sin(Math.PI * t)
const smoothstep: Profile = (t) => 6 * t * (1 - t)
const raisedCosine: Profile = (t) => 1 - Math.cos(2 * Math.PI * t)
const minimumSnap: Profile = (t) => 140 * t ** 3 * (1 - t) ** 3

/** From 0 to `seconds`, both included. */
const samples = (profile: Profile, seconds = 1, rate = 100): number[] =>
  Array.from({ length: Math.round(seconds * rate) + 1 }, (_, k) => profile(k / rate))
const minimumJerkSecond = samples(minimumJerk)
const twoMoves = (pause: number) => samples(moves(2, 0.5, pause), 1 + pause)
/** `count` movements of half a second. */
const stopping = (count: number, pause: number) => samples(moves(count, 0.5, pause), count * 0.5 + (count - 1) * pause)
const constant = Array.from({ length: 100 }, () => 1)
/** exp(−5t²), t = −1, −0.99, … 0.99. */
const published = Array.from({ length: 200 }, (_, k) => Math.exp(-5 * ((k - 100) / 100) ** 2))

describe('the published code’s own examples (S. Balasubramanian et al., J. NeuroEng. Rehabil. 12:112, 2015): exp(−5t²)', () => {
  const { sparc, ldlj } = smoothness(published, 100)
  test('SPARC −1.41403, dimensionless jerk −335.74684, its logarithm −5.81636', () => {
    expect(sparc).toBeCloseTo(-1.41403, 5)
    expect(-Math.exp(-ldlj)).toBeCloseTo(-335.74684, 5)
    expect(ldlj).toBeCloseTo(-5.81636, 5)
  })
  test('to more digits, as computed apart from this program', () => {
    expect(sparc).toBeCloseTo(-1.41403126171, 10)
    expect(-Math.exp(-ldlj)).toBeCloseTo(-335.746837033, 8)
    expect(ldlj).toBeCloseTo(-5.816357415, 8)
  })
})

describe('LDLJ by the published discrete definition; values computed apart from this program', () => {
  // Dimensionless jerk in its table’s digits, and its logarithm.
  test.each<[string, number[], number, number, number]>([
    ['minimum jerk, 101 samples', minimumJerkSecond, 100, -200.664277, -5.301633248],
    ['minimum jerk, the last sample left out', minimumJerkSecond.slice(0, -1), 100, -185.701225, -5.224139068],
    ['minimum jerk × 3.7', minimumJerkSecond.map((v) => 3.7 * v), 100, -200.664277, -5.301633248],
    ['minimum jerk at 50 Hz', samples(minimumJerk, 1, 50), 50, -196.454123, -5.280428932],
    ['minimum jerk at 200 Hz', samples(minimumJerk, 1, 200), 200, -202.741914, -5.311933811],
    ['minimum jerk at 500 Hz', samples(minimumJerk, 1, 500), 500, -203.979171, -5.318017888],
    ['minimum jerk at 1,000 Hz', samples(minimumJerk, 1, 1000), 1000, -204.389992, -5.320029893],
    ['minimum jerk at 10,000 Hz', samples(minimumJerk, 1, 10_000), 10_000, -204.759036, -5.321833853],
    ['constant, a 0 at each end', [0, ...constant, 0], 100, -2122416, -14.56806562],
    ['trapezium, ramps of 0.1 s', samples(trapezium), 100, -20606.02, -9.933338545],
    ['two of 0.5 s that touch', twoMoves(0), 100, -3207.420277, -8.073222241],
    ['two, stop of 0.1 s', twoMoves(0.1), 100, -4154.220358, -8.33188005],
    ['two, stop of 0.25 s', twoMoves(0.25), 100, -6076.202355, -8.712135167],
    ['two, stop of 0.5 s', twoMoves(0.5), 100, -10458.06737, -9.255128957],
    ['two, stop of 1 s', twoMoves(1), 100, -24666.570145, -10.11320417],
    ['sin πt', samples(halfSine), 100, -50.172088, -3.915458861],
    ['smoothstep, 6t(1 − t)', samples(smoothstep), 100, -65.279871, -4.17868374],
  ])('%s', (_, speed, rate, jerk, logarithm) => {
    const { ldlj } = smoothness(speed, rate)
    expect(ldlj).toBeCloseTo(logarithm, 8)
    expect(-Math.exp(-ldlj) / jerk).toBeCloseTo(1, 7)
  })

  test.each([
    ['constant speed', constant],
    ['constant speed that no binary fraction hits', constant.map((_, k) => (k % 2 ? 0.3 : 0.1 + 0.2))],
    ['speed that changes evenly', constant.map((_, k) => 0.1 * k)],
  ])('no jerk: %s has +Infinity', (_, speed) => {
    expect(smoothness(speed, 100).ldlj).toBe(Number.POSITIVE_INFINITY)
  })

  // −ln of integrals done by hand: 204.8 N⁴ and 3276.8 T³ (N. Hogan, D. Sternad, J. Motor Behavior 41(6):529–534, 2009).
  test.each<[string, Profile, number, number]>([
    ['minimum jerk', minimumJerk, 1, 204.8],
    ['two that touch', moves(2, 0.5, 0), 1, 3276.8],
    ['three that touch', moves(3, 1, 0), 3, 16588.8],
    ['four that touch', moves(4, 1, 0), 4, 52428.8],
    ['two, stop of 0.1 s', moves(2, 0.5, 0.1), 1.1, 4361.4208],
    ['two, stop of 0.25 s', moves(2, 0.5, 0.25), 1.25, 6400],
    ['two, stop of 0.5 s', moves(2, 0.5, 0.5), 1.5, 11059.2],
    ['two, stop of 1 s', moves(2, 0.5, 1), 2, 26214.4],
    ['raised cosine', raisedCosine, 1, (2 * Math.PI) ** 4 / 8],
    ['minimum snap', minimumSnap, 1, 234.057142857],
  ])('finer and finer samples come to the exact value: %s', (_, profile, seconds, jerk) => {
    const off = [200, 800, 3200].map((rate) =>
      Math.abs(smoothness(samples(profile, seconds, rate), rate).ldlj + Math.log(jerk)),
    ) as [number, number, number]
    expect(off[1]).toBeLessThan(off[0] / 3)
    expect(off[2]).toBeLessThan(off[1] / 3)
    expect(off[2]).toBeLessThan(3e-3)
  })
})

describe('SPARC (S. Balasubramanian et al. 2015; padding 4, 10 Hz, 0.05); values computed apart, twice', () => {
  test.each<[string, number[], number, number, number]>([
    ['minimum jerk, 101 samples', minimumJerkSecond, 100, -1.405829324421, 10],
    ['minimum jerk, 100 samples', minimumJerkSecond.slice(0, -1), 100, -1.405829324421, 10],
    ['minimum jerk in 0.5 s', samples(moves(1, 0.5, 0), 0.5), 100, -1.40582997, 8],
    ['minimum jerk in 2 s', samples(moves(1, 2, 0), 2), 100, -1.405829284, 8],
    ['minimum jerk at 500 Hz', samples(minimumJerk, 1, 500), 500, -1.402426063, 8],
    ['minimum jerk at 10,000 Hz', samples(minimumJerk, 1, 10_000), 10_000, -1.400417063, 8],
    ['constant', constant, 100, -2.40198821, 8],
    ['constant, a 0 at each end', [0, ...constant, 0], 100, -2.40198821, 8],
    ['trapezium, ramps of 0.1 s', samples(trapezium), 100, -2.107881197, 8],
    ['sin πt', samples(halfSine), 100, -1.562344298, 8],
    ['smoothstep', samples(smoothstep), 100, -1.583177345, 8],
    ['raised cosine', samples(raisedCosine), 100, -1.401050433, 8],
    ['minimum snap', samples(minimumSnap), 100, -1.405427295, 8],
    ['two of 0.5 s that touch', twoMoves(0), 100, -2.244546171, 8],
    ['two, stop of 0.05 s', twoMoves(0.05), 100, -2.50244473, 8],
    ['two, stop of 0.1 s', twoMoves(0.1), 100, -2.712485776, 8],
    ['two, stop of 0.25 s', twoMoves(0.25), 100, -3.119025852, 8],
    ['two, stop of 0.5 s', twoMoves(0.5), 100, -3.993540975, 8],
    ['two, stop of 1 s', twoMoves(1), 100, -5.813874445, 8],
    ['two of 1 s that touch', samples(moves(2, 1, 0), 2), 100, -2.244545458, 8],
    ['three of 1 s that touch', samples(moves(3, 1, 0), 3), 100, -2.703840957, 8],
    ['four of 1 s that touch', samples(moves(4, 1, 0), 4), 100, -3.09684273, 8],
  ])('%s', (_, speed, rate, value, digits) => {
    expect(smoothness(speed, rate).sparc).toBeCloseTo(value, digits)
  })
  test('ends at 10 Hz: two jolts 0.1 s apart have the spectrum |cos(πf / 10 Hz)|, from 0 to 10 Hz one wave of a cosine', () => {
    const jolts = Array.from({ length: 1000 }, (_, k) => (k === 0 || k === 10 ? 1 : 0))
    // The length of y = cos πx for x from 0 to 1, integrated apart; steps of 0.006 Hz cut its corner at 5 Hz.
    expect(smoothness(jolts, 100).sparc).toBeCloseTo(-2.3049, 2)
  })
  test('standing before and after changes it in the fifth digit only', () => {
    const stand = Array.from({ length: 20 }, () => 0)
    const { sparc } = smoothness([...stand, ...minimumJerkSecond, ...stand, ...stand], 100)
    expect(Math.abs(sparc + 1.405829)).toBeLessThan(1e-4)
  })
})

describe('peak over mean speed', () => {
  // Peak and way of each, integrated by hand; 15/8 as in Flash & Hogan 1985.
  test.each<[string, number[], number]>([
    ['constant', constant, 1],
    ['minimum jerk', minimumJerkSecond, 15 / 8],
    ['minimum snap', samples(minimumSnap), 140 / 64],
    ['raised cosine', samples(raisedCosine), 2],
    ['sin πt', samples(halfSine, 1, 1000), Math.PI / 2],
    ['smoothstep', samples(smoothstep, 1, 1000), 3 / 2],
    ['trapezium', samples(trapezium), 1 / 0.9],
    ['two, stop of 1 s: half the mean', twoMoves(1), 15 / 4],
  ])('%s', (_, speed, ratio) => {
    expect(smoothness(speed, 100).peakOverMean).toBeCloseTo(ratio, 5)
  })
})

describe('smoothness(speed, samplesASecond)', () => {
  const unit = fc.double({ min: 0, max: 1, noNaN: true })
  const someSpeed = fc.array(unit, { minLength: 3, maxLength: 60 }).chain((speed) =>
    // One speed well above 0, anywhere: a movement.
    fc.nat(speed.length).map((at) => speed.toSpliced(at, 0, 1)),
  )

  test('does not depend on amplitude', () => {
    fc.assert(
      fc.property(someSpeed, fc.double({ min: -9, max: 9, noNaN: true }), (speed, power) => {
        const [one, other] = [1, 10 ** power].map((size) =>
          smoothness(
            speed.map((v) => size * v),
            100,
          ),
        ) as [ReturnType<typeof smoothness>, ReturnType<typeof smoothness>]
        expect(other.sparc).toBeCloseTo(one.sparc, 9)
        expect(other.ldlj).toBeCloseTo(one.ldlj, 8)
        expect(other.peakOverMean).toBeCloseTo(one.peakOverMean, 9)
      }),
      THOUSAND,
    )
  })
  test('SPARC is at most −1, peak over mean at least 1; the same backwards', () => {
    fc.assert(
      fc.property(someSpeed, (speed) => {
        const [there, back] = [smoothness(speed, 100), smoothness(speed.toReversed(), 100)]
        expect(there.sparc).toBeLessThanOrEqual(-1 + 1e-12)
        expect(there.peakOverMean).toBeGreaterThanOrEqual(1)
        expect(back.sparc).toBeCloseTo(there.sparc, 9)
        expect(back.ldlj).toBeCloseTo(there.ldlj, 8)
        expect(back.peakOverMean).toBeCloseTo(there.peakOverMean, 9)
      }),
      THOUSAND,
    )
  })
  test('LDLJ and peak over mean do not depend on duration: the same samples at another rate', () => {
    const [slow, fast] = [smoothness(minimumJerkSecond, 25), smoothness(minimumJerkSecond, 1000)]
    expect(fast.ldlj).toBe(slow.ldlj)
    expect(fast.peakOverMean).toBe(slow.peakOverMean)
  })
  test.each([0, 0.1, 0.25, 0.5, 1])('each further stop, of %s s, lowers SPARC and LDLJ', (pause) => {
    for (let count = 1; count < 6; count++) {
      const [fewer, more] = [smoothness(stopping(count, pause), 100), smoothness(stopping(count + 1, pause), 100)]
      expect(more.sparc).toBeLessThan(fewer.sparc)
      expect(more.ldlj).toBeLessThan(fewer.ldlj)
    }
  })
  test('half way through a movement of 1 s, a stop of 0.1 s or more lowers SPARC by more than 1.2', () => {
    const { sparc } = smoothness(minimumJerkSecond, 100)
    for (let hundredths = 10; hundredths <= 100; hundredths++) {
      expect(smoothness(twoMoves(hundredths / 100), 100).sparc).toBeLessThan(sparc - 1.2)
    }
  })
  test('good, slowed in the middle, stopped in the middle: worse one after another', () => {
    const dipped = (depth: number) => samples((t) => minimumJerk(t) * (1 - depth * Math.exp(-(((t - 0.5) / 0.1) ** 2))))
    for (const measure of ['sparc', 'ldlj'] as const) {
      const [good, slowed, stopped] = [0, 0.5, 1].map((depth) => smoothness(dipped(depth), 100)[measure])
      expect(slowed).toBeLessThan(good as number)
      expect(stopped).toBeLessThan(slowed as number)
    }
  })
  test('three slows across in their first half, then a wait, against slows without one', () => {
    // Half a second a beat. The curve is the one that every performance has.
    const danced = (across: number) => {
      const knots = [0, 1, 2].flatMap((k) => [
        { t: 2 * k, p: k },
        { t: 2 * k + across, p: k + 1 },
      ])
      const curve = curveThrough(knots.filter(({ t }, k) => t !== knots[k + 1]?.t))
      return smoothness(
        samples((t) => curve.speed(2 * t), 3),
        100,
      )
    }
    const [even, tooSoon] = [danced(2), danced(1)]
    expect(tooSoon.sparc).toBeLessThan(even.sparc - 1)
    expect(tooSoon.ldlj).toBeLessThan(even.ldlj)
    expect(tooSoon.peakOverMean).toBeGreaterThan(even.peakOverMean)
  })
  test('takes a Float64Array and leaves it as it was', () => {
    const speed = Float64Array.from(minimumJerkSecond, (v) => 2 * v)
    const before = [...speed]
    expect(smoothness(speed, 100)).toEqual(smoothness(before, 100))
    expect([...speed]).toEqual(before)
  })
  test('a 0 that rounding has left just below 0 is a 0', () => {
    const { sparc, ldlj } = smoothness([-1e-16, ...minimumJerkSecond.slice(1)], 100)
    expect(sparc).toBeCloseTo(-1.405829, 6)
    expect(ldlj).toBeCloseTo(-5.301633, 6)
  })

  test.each<[string, number[], number, RegExp]>([
    ['no samples', [], 100, /at least 4 samples, got 0/],
    ['three samples', [0, 1, 0], 100, /at least 4 samples, got 3/],
    ['no movement', [0, 0, 0, 0, 0], 100, /every speed is 0/],
    ['NaN', [0, 1, Number.NaN, 0], 100, /finite, got NaN at sample 2/],
    ['Infinity', [0, Number.POSITIVE_INFINITY, 1, 0], 100, /finite, got Infinity at sample 1/],
    ['a speed below 0', [0, 1, -0.5, 0], 100, /below 0, got -0.5 at sample 2/],
    ['every speed below 0', [-1, -1, -1, -1], 100, /below 0, got -1 at sample 0/],
    ['no samples a second', minimumJerkSecond, 0, /at least 20, got 0/],
    ['a rate below 0', minimumJerkSecond, -100, /at least 20, got -100/],
    ['a rate that cannot show 10 Hz', minimumJerkSecond, 19, /at least 20, got 19/],
    ['a rate that is no number', minimumJerkSecond, Number.NaN, /got NaN/],
    ['an endless rate', minimumJerkSecond, Number.POSITIVE_INFINITY, /got Infinity/],
    ['4 ms', [0, 1, 1, 0], 1000, /4 samples in 4 ms are too short/],
  ])('refuses %s', (_, speed, rate, message) => {
    expect(() => smoothness(speed, rate)).toThrow(RangeError)
    expect(() => smoothness(speed, rate)).toThrow(message)
  })
})
