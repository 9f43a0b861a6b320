import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { danceList } from '../../src/dance/dances.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import { chunksOf } from '../../src/sound/chunksOf.ts'
import { renderRound } from '../../src/sound/renderRound.ts'
import type { Tick } from '../../src/sound/tick.ts'
import { madeVoice } from '../tools/madeVoice.ts'
import { sameSamples } from '../tools/sameSamples.ts'
import { playedTempi } from '../tools/soundedLesson.ts'

const KINDS: readonly Tick['click'][] = ['bar', 'beat', 'half', null]
const WORDS: readonly Tick['say'][] = ['one', 'two', 'and', null]

describe('chunksOf(ticks, asked, voice)', () => {
  test('every chunk is the slice of the whole round, to the last bit; sounds over the cuts and over the round’s end', () => {
    const places = fc.uniqueArray(fc.integer({ min: 0, max: 95 }), { minLength: 1, maxLength: 40 })
    fc.assert(
      fc.property(
        places,
        fc.integer({ min: 17, max: 24 }),
        fc.double({ min: 0.05, max: 0.3, noNaN: true }),
        fc.constantFrom(2, 3, 4),
        (quarters, beats, beat, beatsPerBar) => {
          const ticks = quarters
            .sort((a, b) => a - b)
            .map((at, k): Tick => ({ at: at / 4, click: KINDS[k % 4]!, say: WORDS[k % 3]! }))
            .filter(({ at }) => at < beats)
          const asked = { beats, secondsPerBeat: beat, sampleRate: 8000, beatsPerBar }
          const whole = renderRound(ticks, asked, madeVoice())
          const chunks = chunksOf(ticks, asked, madeVoice())
          expect(chunks.starts.length).toBe(Math.ceil(beats / beatsPerBar / 4))
          expect([chunks.length, chunks.secondsPerBeat]).toEqual([whole.samples.length, whole.secondsPerBeat])
          for (const [k, start] of chunks.starts.entries()) {
            const end = chunks.starts[k + 1] ?? chunks.length
            expect(Math.abs(start - k * 4 * beatsPerBar * whole.secondsPerBeat * 8000)).toBeLessThanOrEqual(0.5 + 1e-6)
            expect(sameSamples(chunks.samplesOf(k), whole.samples.subarray(start, end))).toBe(true)
          }
        },
      ),
      { numRuns: 40, seed: 20261125 },
    )
  })
  test('≤ 16 MB at any tempo: the chunk that sounds and all that begin in the next 4 s', () => {
    // The longest figure has 500 actions; of two bars each it is played for an hour and more at 20 %.
    for (const { beatsPerBar, id } of danceList)
      for (const tempo of playedTempi(id, [0, 0.1, 0.3, 0.6, 1]))
        for (const sampleRate of [48_000, 96_000, 192_000])
          for (const bars of [4.25, 9, 31, 1000]) {
            const beat = secondsPerBeat({ beatsPerBar }, tempo)
            const asked = { beats: bars * beatsPerBar, secondsPerBeat: beat, sampleRate, beatsPerBar }
            const { starts, length } = chunksOf([], asked, null)
            const ends = [...starts.slice(1), length]
            const ahead = 4 * sampleRate
            for (const [k, start] of starts.entries()) {
              // Shortly before the chunk ends most is held.
              let held = ends[k]! - start
              for (let next = k + 1; held > 0; next++) {
                const [turn, index] = [Math.floor(next / starts.length), next % starts.length]
                if (starts[index]! + turn * length > ends[k]! + ahead) break
                held += ends[index]! - starts[index]!
              }
              if (held * 4 > 16e6) expect.fail(`${id} ${tempo} ${sampleRate} ${bars}: ${held * 4} bytes`)
            }
          }
  })
  test('four bars where they fit, fewer at the slowest: at 48 kHz from 10 s on', () => {
    const starts = (beat: number) =>
      chunksOf([], { beats: 64, secondsPerBeat: beat, sampleRate: 48_000, beatsPerBar: 4 }, null).starts.length
    expect([starts(0.5), starts(0.65), starts(0.66), starts(5)]).toEqual([4, 4, 8, 32])
  })
  test('there is no chunk before the first or after the last', () => {
    const chunks = chunksOf([], { beats: 40, secondsPerBeat: 0.5, sampleRate: 8000, beatsPerBar: 4 }, null)
    expect(chunks.starts.length).toBe(3)
    expect(chunks.samplesOf(2).length).toBe(8 * 4000)
    for (const index of [-1, 3, 0.5]) expect(() => chunks.samplesOf(index)).toThrow(RangeError)
  })
})
