import { describe, expect, test } from 'vitest'
import { type ClickKind, clickSounds } from '../../src/sound/clickSounds.ts'

const RATES = [8000, 22_050, 44_100, 48_000, 96_000, 192_000] as const
const KINDS: readonly ClickKind[] = ['bar', 'beat', 'half']

const peak = (samples: Float32Array): number => samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
const rms = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length)

/** How strong a frequency is: one line of a discrete Fourier transform, written out. */
function strength(samples: Float32Array, sampleRate: number, hertz: number): number {
  let [re, im] = [0, 0]
  for (const [k, sample] of samples.entries()) {
    const angle = (2 * Math.PI * hertz * k) / sampleRate
    re += sample * Math.cos(angle)
    im -= sample * Math.sin(angle)
  }
  return Math.hypot(re, im)
}

/** The middle of the spectrum, weighted with its strength, in hertz. */
function centroid(samples: Float32Array, sampleRate: number): number {
  let [weighted, sum] = [0, 0]
  for (let hertz = 25; hertz < 4000; hertz += 25) {
    const size = strength(samples, sampleRate, hertz)
    weighted += hertz * size
    sum += size
  }
  return weighted / sum
}

describe('clickSounds(sampleRate)', () => {
  test.each(RATES)('at %i Hz: begins and ends with nothing, full no sooner than 2 ms, no longer than 60 ms', (rate) => {
    const sounds = clickSounds(rate)
    for (const kind of KINDS) {
      const samples = sounds[kind]
      expect([Math.abs(samples[0]!), Math.abs(samples.at(-1)!)]).toEqual([0, 0])
      const loudest = peak(samples)
      expect(samples.findIndex((sample) => Math.abs(sample) === loudest)).toBeGreaterThanOrEqual(0.002 * rate)
      expect(samples.length).toBeLessThanOrEqual(0.06 * rate)
      expect(peak(samples.subarray(samples.length - Math.floor(rate * 0.0005)))).toBeLessThan(loudest / 500)
      // A quarter of it is not reached in the first half millisecond: no snap.
      expect(peak(samples.subarray(0, Math.ceil(rate * 0.0005)))).toBeLessThan(loudest / 4)
    }
  })
  test.each(RATES)(
    'at %i Hz: no step between neighbours is larger than a 2 kHz tone of the same peak makes',
    (rate) => {
      const sounds = clickSounds(rate)
      for (const kind of KINDS) {
        const samples = sounds[kind]
        const steepest = samples.reduce(
          (most, sample, k) => Math.max(most, Math.abs(sample - (samples[k - 1] ?? 0))),
          0,
        )
        expect(steepest).toBeLessThan(peak(samples) * 2 * Math.sin((Math.PI * 2000) / rate))
      }
    },
  )
  test('starts quiet: the loudest peaks at no more than −12 dBFS (own judgement: a page cannot know the level at the ear, which WHO-ITU H.870 is about)', () => {
    for (const rate of RATES) expect(peak(clickSounds(rate).bar)).toBeLessThanOrEqual(10 ** (-12 / 20))
  })
  test('pitch and loudness fall from the first of the bar to the beat to the half: by a third and by 3 dB at least', () => {
    const sounds = clickSounds(48_000)
    const pitches = KINDS.map((kind) => centroid(sounds[kind], 48_000))
    // Over the same time, as the ear does.
    const louds = KINDS.map((kind) => rms(Float32Array.from({ length: 2880 }, (_, k) => sounds[kind][k] ?? 0)))
    for (const k of [1, 2]) {
      // A major third is 5:4.
      expect(pitches[k - 1]! / pitches[k]!).toBeGreaterThan(1.25)
      expect(20 * Math.log10(louds[k - 1]! / louds[k]!)).toBeGreaterThan(3)
    }
  })
  test('the same sound at another rate', () => {
    const [low, high] = [clickSounds(24_000), clickSounds(48_000)]
    for (const kind of KINDS)
      for (let k = 0; k < low[kind].length - 200; k++)
        expect(Math.abs(low[kind][k]! - high[kind][2 * k]!)).toBeLessThan(0.005)
  })
  test.each([0, 7999, Number.NaN, Number.POSITIVE_INFINITY])('a rate of %d is refused', (rate) => {
    expect(() => clickSounds(rate)).toThrow(RangeError)
  })
})
