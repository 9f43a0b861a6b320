import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { countInTicks } from '../../src/sound/countInTicks.ts'
import { renderCountIn } from '../../src/sound/renderCountIn.ts'
import { renderRound } from '../../src/sound/renderRound.ts'
import { ticksOf } from '../../src/sound/ticksOf.ts'
import { countInFrom } from '../../src/timing/countIn.ts'
import { findOnsets } from '../tools/findOnsets.ts'
import { madeVoice } from '../tools/madeVoice.ts'
import { ALL_CLICKS, walksLesson } from '../tools/soundedLesson.ts'

const RATE = 48_000
const LEAD = 5760
const steepest = (samples: Float32Array): number =>
  samples.reduce((most, sample, k) => (k === 0 ? 0 : Math.max(most, Math.abs(sample - samples[k - 1]!))), 0)

describe('renderCountIn(ticks, beats, round, lead, voice)', () => {
  test('at any tempo its clicks lie on the beats before the round, within a sample; the round follows without a gap', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('waltz', 'foxtrot', 'rumba', 'samba'),
        fc.double({ min: 0.25, max: 3, noNaN: true }),
        (dance, asked) => {
          const lesson = walksLesson(dance, [1, 1])
          const time = { beats: lesson.round, secondsPerBeat: asked, sampleRate: RATE }
          const beats = lesson.range.from - countInFrom(lesson.schedule, 0, 1)
          const ticks = ticksOf(lesson, ALL_CLICKS)
          const before = countInTicks(lesson, lesson.range.from - beats, ALL_CLICKS)
          const round = renderRound(ticks, time, null)
          const samples = renderCountIn(before, beats, { ticks, asked: time }, LEAD, null)
          const whole = new Float32Array(samples.length + round.samples.length)
          whole.set(samples)
          whole.set(round.samples, samples.length)
          const onsets = findOnsets(whole, RATE)
          const wanted = [
            ...before.map(({ at }) => samples.length + (at - beats) * round.secondsPerBeat * RATE),
            ...ticks.map(({ at }) => samples.length + at * round.secondsPerBeat * RATE),
          ]
          expect(onsets.length).toBe(wanted.length)
          for (const [k, at] of wanted.entries()) expect(Math.abs(at - onsets[k]!)).toBeLessThanOrEqual(1.5)
          // Room for what begins before its beat.
          expect(wanted[0]).toBeGreaterThanOrEqual(LEAD)
        },
      ),
      { numRuns: 40, seed: 20261126 },
    )
  })
  test('a word said on the round’s first beat begins before it, and goes on into the round without a step', () => {
    const lesson = walksLesson('waltz', [1, 1, 1])
    // A round that begins on its first call.
    const ticks = [{ at: 0, click: null, say: 'one' }] as const
    const asked = { beats: 3, secondsPerBeat: 0.6003, sampleRate: RATE }
    const voice = madeVoice({ onset: 1200, sample: (k, all) => 0.4 * Math.sin((Math.PI * k) / (all - 1)) })
    const before = countInTicks(lesson, lesson.range.from - 3, {
      ...ALL_CLICKS,
      counting: 'bars and beats',
      count: 'counting',
    })
    const samples = renderCountIn(
      before.map((tick) => ({ ...tick, click: null })),
      3,
      { ticks, asked },
      LEAD,
      voice,
    )
    const round = renderRound(ticks, asked, voice).samples
    const whole = new Float32Array(samples.length + round.length)
    whole.set(samples)
    whole.set(round, samples.length)
    // The hum of 0.3 s goes up and down by 0.4: from sample to sample by less than this, but where it gives way in 8 ms.
    expect(steepest(whole.subarray(samples.length - 2400, samples.length + 4800))).toBeLessThan(0.0005)
    expect(Math.abs(samples.at(-1)!)).toBeGreaterThan(0.05)
  })
  test('a word of counting in that is not over when the round begins gives way to it', () => {
    const voice = madeVoice({ length: 20_000, onset: 100, sample: () => 0.4 })
    const asked = { beats: 2, secondsPerBeat: 0.4, sampleRate: RATE }
    const samples = renderCountIn([{ at: 0, click: null, say: 'one' }], 0.5, { ticks: [], asked }, 480, voice)
    expect(samples.length).toBe(480 + 0.2 * RATE)
    expect(samples.at(-1)).toBe(0)
    expect(steepest(samples.subarray(2000))).toBeLessThan(0.4 / (0.007 * RATE))
  })
  test('nothing is counted in: what of the round begins before its beat', () => {
    const asked = { beats: 2, secondsPerBeat: 0.4, sampleRate: RATE }
    const samples = renderCountIn([], 0, { ticks: [{ at: 0, click: 'bar', say: null }], asked }, LEAD, null)
    expect([samples.length, samples.every((sample) => sample === 0)]).toEqual([LEAD, true])
  })
})
