import { describe, expect, test } from 'vitest'
import { evenLoudness, FADE, PEAK, trimAndFade } from './makeVoice.mjs'
import { near } from './near.ts'
import { perceivedOnset } from './perceivedOnset.mjs'
import { voicedLevel } from './voicedLevel.mjs'

const RATES = [16_000, 22_050, 44_100, 48_000]

/** A sound whose rectified height is a function of the time in seconds. */
const sound = (rate: number, seconds: number, height: (time: number) => number): number[] =>
  Array.from({ length: Math.round(rate * seconds) }, (_, at) => (at % 2 === 0 ? 1 : -1) * height(at / rate))

// All by the definition: what is known of a moving average that is centred.
describe.each(RATES)('perceivedOnset(samples, %d)', (rate) => {
  test('of a block is its beginning', () => {
    near(
      perceivedOnset(
        sound(rate, 0.4, (t) => (t >= 0.1 && t < 0.3 ? 0.5 : 0)),
        rate,
      ),
      0.1 * rate,
      1,
    )
  })
  test('of a straight rise of 100 ms is its middle', () => {
    near(
      perceivedOnset(
        sound(rate, 0.4, (t) => Math.min(1, Math.max(0, (t - 0.1) / 0.1))),
        rate,
      ),
      0.15 * rate,
      1,
    )
  })
  test('is the vowel after a quiet hiss, and the hiss where that is loud', () => {
    const hissed = (level: number) =>
      sound(rate, 0.4, (t) => (t < 0.05 || t > 0.3 ? 0 : t < 0.13 ? level : t < 0.15 ? 0 : 1))
    near(perceivedOnset(hissed(0.6), rate), 0.15 * rate, 1)
    near(perceivedOnset(hissed(0.7), rate), 0.05 * rate, 1)
  })
  test('does not depend on loudness, nor on the silence around', () => {
    const word = sound(rate, 0.3, (t) => Math.sin((Math.PI * t) / 0.3) ** 2)
    const onset = perceivedOnset(word, rate)
    expect(
      perceivedOnset(
        word.map((sample) => sample / 50),
        rate,
      ),
    ).toBe(onset)
    expect(perceivedOnset([...Array(3000).fill(0), ...word, ...Array(500).fill(0)], rate)).toBe(onset + 3000)
  })
  test('of silence is refused', () => {
    expect(() => perceivedOnset(new Float32Array(rate), rate)).toThrow(RangeError)
  })
})

describe('makeVoice.mjs', () => {
  test('voicedLevel: of a steady tone its amplitude over √2, whatever quiet hiss goes before it', () => {
    const tone = Array.from({ length: 16_000 }, (_, at) => 0.3 * Math.sin(at / 3))
    near(voicedLevel(tone, 16_000), 0.3 / Math.SQRT2, 0.002)
    near(voicedLevel([...sound(16_000, 0.5, () => 0.05), ...tone], 16_000), 0.3 / Math.SQRT2, 0.002)
  })
  test('trimAndFade: cuts silence, keeps what is between, and ends at nothing on both sides', () => {
    const rate = 10_000
    const made = trimAndFade([...Array(70).fill(0.003), ...Array(500).fill(0.5), ...Array(90).fill(-0.003)], rate)
    expect(made).toHaveLength(500)
    expect([made[0], made.at(-1)]).toEqual([0, 0])
    const fade = FADE * rate
    expect([made[fade / 2], made[fade], made[499 - fade], made[499 - fade / 2]]).toEqual([0.25, 0.5, 0.5, 0.25])
  })
  test('evenLoudness: one level for all, the greatest at which no peak is too high', () => {
    const rate = 16_000
    const tone = (gain: number) => Array.from({ length: 4000 }, (_, at) => gain * Math.sin(at / 5))
    const spiky = tone(0.1).map((sample, at) => (at === 2000 ? 0.4 : sample))
    const made = evenLoudness([tone(0.9), tone(0.01), spiky], rate)
    const [first = 0, ...others] = made.map((word) => voicedLevel(word, rate))
    for (const other of others) near(other, first, 1e-9)
    near(Math.max(...made.flat().map(Math.abs)), PEAK, 1e-9)
  })
})
