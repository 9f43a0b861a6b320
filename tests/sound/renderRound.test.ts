import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Counting } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import { clickSounds } from '../../src/sound/clickSounds.ts'
import { fitsOneBuffer, renderRound } from '../../src/sound/renderRound.ts'
import { roundTime } from '../../src/sound/roundTime.ts'
import type { Tick } from '../../src/sound/tick.ts'
import { ticksOf } from '../../src/sound/ticksOf.ts'
import { findOnsets } from '../tools/findOnsets.ts'
import { madeVoice } from '../tools/madeVoice.ts'
import { near } from '../tools/near.ts'
import { sameSamples } from '../tools/sameSamples.ts'
import { ALL_CLICKS, playedTempi, walksLesson } from '../tools/soundedLesson.ts'
import { wholeRound } from '../tools/wholeRound.ts'

const COUNTINGS: readonly Counting[] = ['slows and quicks', 'bars and beats', 'half beats']
const RATES = [44_100, 22_050, 8000] as const
const tick = (at: number, click: Tick['click'], say: string | null = null): Tick => ({ at, click, say })
const peak = (samples: Float32Array): number => samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
const steepest = (samples: Float32Array): number =>
  samples.reduce((most, sample, k) => (k === 0 ? 0 : Math.max(most, Math.abs(sample - samples[k - 1]!))), 0)
function twiceOver(samples: Float32Array): Float32Array {
  const twice = new Float32Array(2 * samples.length)
  twice.set(samples)
  twice.set(samples, samples.length)
  return twice
}

describe('renderRound(ticks, asked, voice): where clicks are heard', () => {
  const tempi = fc.sample(fc.integer({ min: 1, max: 999 }), { numRuns: 2, seed: 20261125 }).map((part) => part / 1000)
  const cases = danceList
    .filter(({ id }) => id !== 'exercise')
    .flatMap(({ id }) => playedTempi(id, [0, 1, ...tempi]).map((tempo) => [id, tempo] as const))
  test.each(cases)('%s at %d bars a minute, three ways of counting: every click within 2 samples', (dance, tempo) => {
    const asked = secondsPerBeat(dances[dance], tempo)
    const values = dances[dance].signs.S === null || dance === 'waltz' ? [1, 1, 0.5, 0.5] : [1, 0.75, 0.25, 1]
    const lesson = walksLesson(dance, values)
    for (const [k, counting] of COUNTINGS.entries()) {
      const sampleRate = RATES[k]!
      const ticks = ticksOf(lesson, { ...ALL_CLICKS, counting, count: 'counting' })
      const clicks = ticks.filter(({ click }) => click !== null)
      const { beatsPerBar } = dances[dance]
      const round = wholeRound(ticks, { beats: lesson.round, secondsPerBeat: asked, sampleRate, beatsPerBar })
      const found = findOnsets(round.samples, sampleRate)
      expect(found.length).toBe(clicks.length)
      for (const [index, { at, click }] of clicks.entries()) {
        near(found[index], at * asked * sampleRate, 2, dance, at, String(click))
        // How loud it is tells what it is.
        const loud = peak(round.samples.subarray(found[index], found[index]! + 0.02 * sampleRate))
        expect(loud > 0.2 ? 'bar' : loud > 0.11 ? 'beat' : 'half').toBe(click)
      }
      // Whole samples, within half a one of what was asked for over the round.
      near(round.samples.length, lesson.round * asked * sampleRate, 0.5, 'length')
      near(round.secondsPerBeat * lesson.round * sampleRate, round.samples.length, 1e-6, 'exact beat')
    }
  })
  test('a round that comes out even is exact: 3 beats at 84 a minute and 44.1 kHz are 94,500 samples', () => {
    const round = renderRound([tick(0, 'bar')], { beats: 3, secondsPerBeat: 60 / 84, sampleRate: 44_100 }, null)
    expect([round.samples.length, round.secondsPerBeat]).toEqual([94_500, 60 / 84])
  })
  test('64 rounds one after the other: the last click is within 2 samples of its beat as the round counts beats', () => {
    const asked = { beats: 4, secondsPerBeat: 60 / 223.3, sampleRate: 8000 }
    const { samples, secondsPerBeat: beat } = renderRound([tick(0, 'bar'), tick(3, 'beat')], asked, null)
    const played = new Float32Array(64 * samples.length)
    for (let k = 0; k < 64; k++) played.set(samples, k * samples.length)
    const found = findOnsets(played, 8000)
    expect(found.length).toBe(128)
    near(found.at(-1), (63 * 4 + 3) * beat * 8000, 2, 'last')
    // Half a sample a round is all that it can lose against the tempo that was asked for: here 4 ms in 64 rounds.
    near(found.at(-1), (63 * 4 + 3) * asked.secondsPerBeat * 8000, 64 / 2 + 2, 'last, as asked')
  })
})

describe('renderRound(ticks, asked, voice): words', () => {
  const asked = { beats: 4, secondsPerBeat: 0.5, sampleRate: 48_000 }
  test.each([48_000, 24_000, 22_050, 44_100])(
    'a word of %i Hz: its onset falls on the beat, within a sample',
    (rate) => {
      // Silence before the onset: there the word's first sample that is something.
      const voice = madeVoice({
        sampleRate: rate,
        length: 4000,
        onset: 1000,
        sample: (k) => (k < 1000 ? 0 : 0.5 * Math.cos((k - 1000) / 10) * Math.exp(-(k - 1000) / 400)),
      })
      const ticks = [tick(0.25, null, 'one'), tick(1.5, null, 'and'), tick(2 + 1 / 3, null, 'two')]
      const { samples } = renderRound(ticks, asked, voice)
      // Straight lines begin to rise one sample of the voice before the onset.
      const found = findOnsets(samples, 48_000)
      expect(found.length).toBe(3)
      for (const [k, { at }] of ticks.entries()) near(found[k], at * 24_000, 48_000 / rate + 1, 'onset', k)
    },
  )
  test('at the same rate its samples are those of the voice, at half', () => {
    const voice = madeVoice({ sampleRate: 48_000 })
    const { samples, onset } = voice.words.get('one')!
    const round = renderRound([tick(2, null, 'one')], asked, voice)
    for (const [k, sample] of samples.entries()) near(round.samples[48_000 - onset + k], sample / 2, 1e-7, 'sample', k)
  })
  test('at another rate a straight line stays one', () => {
    const voice = madeVoice({ sampleRate: 16_000, length: 1601, onset: 0, sample: (k) => k / 3200 })
    const { samples } = renderRound([tick(1, null, 'one')], asked, voice, { clicks: 0, words: 1 })
    for (let k = 0; k <= 4800; k++) near(samples[24_000 + k], k / 9600, 1e-6, 'ramp', k)
  })
  test('one speaker: the next word takes the place of the one before, which fades before it', () => {
    const hum = madeVoice({ sampleRate: 48_000, length: 30_000, onset: 0, sample: (k) => (k < 29_000 ? 0.4 : 0) })
    const two = renderRound([tick(0, null, 'one'), tick(1, null, 'two')], asked, hum, { clicks: 0, words: 1 })
    expect(two.samples[23_999]).toBe(0)
    // Never two at a time: no louder than one.
    expect(peak(two.samples)).toBeCloseTo(0.4, 6)
    expect(steepest(two.samples.subarray(0, 24_000))).toBeLessThan(0.4 / (0.007 * 48_000))
  })
  test('a word that the voice does not have is not said, and its click is heard', () => {
    const { samples } = renderRound([tick(1, 'beat', 'seventeen')], asked, madeVoice())
    expect(sameSamples(samples, renderRound([tick(1, 'beat')], asked, null).samples)).toBe(true)
  })
})

describe('renderRound(ticks, asked, voice): the loop', () => {
  // An onset before the beat, sounds that ring over the end, and a beat of an odd number of samples.
  const ticks = [tick(0, 'bar', 'one'), tick(1, 'beat', 'two'), tick(2.5, 'half', 'and'), tick(2.95, 'beat', 'a')]
  const asked = { beats: 3, secondsPerBeat: 15_001 / 48_000, sampleRate: 48_000 }
  test('two rounds one after the other have no jump at the seam larger than inside', () => {
    const { samples } = renderRound(ticks, asked, madeVoice())
    expect(Math.abs(samples.at(-1)!)).toBeGreaterThan(0.001)
    expect(Math.abs(samples[0]! - samples.at(-1)!)).toBeLessThanOrEqual(steepest(samples))
    expect(steepest(twiceOver(samples))).toBe(steepest(samples))
  })
  test('twice the round is the round of twice the ticks: nothing is cut off, nothing is doubled', () => {
    const once = renderRound(ticks, asked, madeVoice()).samples
    const later = ticks.map(({ at, ...rest }) => ({ at: at + 3, ...rest }))
    const twice = renderRound([...ticks, ...later], { ...asked, beats: 6 }, madeVoice()).samples
    expect(twice.length).toBe(2 * once.length)
    for (const [k, sample] of twiceOver(once).entries()) near(twice[k], sample, 1e-6, 'sample', k)
  })
  test('a click longer than the round rings over it more than once', () => {
    const short = renderRound([tick(0, 'bar')], { beats: 1, secondsPerBeat: 0.025, sampleRate: 48_000 }, null)
    const click = clickSounds(48_000).bar
    for (const [k, sample] of short.samples.entries())
      near(sample, (click[k] ?? 0) + (click[k + 1200] ?? 0) + (click[k + 2400] ?? 0), 1e-6, 'sample', k)
  })
})

describe('renderRound(ticks, asked, voice): how loud', () => {
  const asked = { beats: 4, secondsPerBeat: 0.5, sampleRate: 48_000 }
  test('silence where nothing is', () => {
    const { samples } = renderRound([tick(1, 'bar'), tick(2.5, 'half')], asked, null)
    const sounding = (k: number) => [24_000, 60_000].some((start) => k > start && k < start + 0.06 * 48_000)
    expect(samples.findIndex((sample, k) => !sounding(k) && sample !== 0)).toBe(-1)
    expect(peak(renderRound([], asked, madeVoice()).samples)).toBe(0)
  })
  test('at first the loudest click, and a word of a voice that peaks at −6 dBFS as ours does, peak at −12 dBFS', () => {
    const full = madeVoice({
      sample: (k, all) => 10 ** (-6 / 20) * Math.sin((Math.PI * k) / (all - 1)) * Math.sin(k / 20),
    })
    const quiet = 10 ** (-12 / 20)
    expect(peak(renderRound([tick(1, 'bar')], asked, null).samples)).toBeLessThanOrEqual(quiet)
    expect(peak(renderRound([tick(1, null, 'one')], asked, full).samples)).toBeLessThanOrEqual(quiet)
  })
  test('clicks and words by themselves: half as loud, or not at all', () => {
    const ticks = [tick(1, 'bar'), tick(3, null, 'one')]
    const both = renderRound(ticks, asked, madeVoice()).samples
    const half = renderRound(ticks, asked, madeVoice(), { clicks: 0.5, words: 0 }).samples
    expect(peak(half)).toBeCloseTo(peak(both.subarray(20_000, 30_000)) / 2, 6)
    expect(peak(half.subarray(60_000))).toBe(0)
  })
  test('the limiter: a click on a full word stays within ±0.89, bent and not cut', () => {
    const full = madeVoice({ sampleRate: 48_000, length: 12_000, onset: 6000, sample: (k) => Math.sin(k / 50) })
    const { samples } = renderRound([tick(1, 'bar', 'one')], asked, full, { clicks: 1, words: 1 })
    const word = full.words.get('one')!.samples
    expect(peak(word)).toBeGreaterThan(0.999)
    expect(peak(samples)).toBeLessThanOrEqual(0.89)
    // A clipper would leave many samples at one height.
    const highest = peak(samples)
    const high = samples.filter((sample) => sample > 0.8)
    expect(high.length).toBeGreaterThan(100)
    expect(high.filter((sample) => sample === highest).length).toBeLessThan(high.length / 10)
  })
  test.each([
    ['a tick before the round', [tick(-0.1, 'bar')], asked, undefined],
    ['a tick at its end', [tick(4, 'bar')], asked, undefined],
    ['a gain over 1', [], asked, { clicks: 1.1, words: 1 }],
    ['a gain that is none', [], asked, { clicks: 1, words: Number.NaN }],
    ['no beats', [], { ...asked, beats: 0 }, undefined],
    ['no tempo', [], { ...asked, secondsPerBeat: Number.NaN }, undefined],
    ['a rate no browser has', [tick(0, 'bar')], { ...asked, sampleRate: 4000 }, undefined],
    ['more than 30 s', [], { ...asked, beats: 61 }, undefined],
    ['more than 8 MB', [], { ...asked, beats: 30, sampleRate: 192_000 }, undefined],
    ['less than a sample', [], { ...asked, secondsPerBeat: 1e-7 }, undefined],
  ])('%s is refused', (_, ticks, wrong, gains) => {
    expect(() => renderRound(ticks, wrong, null, gains)).toThrow(RangeError)
  })
  test('30 s at 48 kHz fit one buffer: 5.76 MB', () => {
    const longest = { beats: 60, secondsPerBeat: 0.5, sampleRate: 48_000 }
    expect([fitsOneBuffer(longest), fitsOneBuffer({ ...longest, beats: 61 })]).toEqual([true, false])
    expect(roundTime(longest).length * 4).toBe(5_760_000)
  })
})
