import fc from 'fast-check'
import { expect, test } from 'vitest'
import { danceList } from '../../src/dance/dances.ts'
import { readTiming } from '../../src/figure/readTiming.ts'
import { beatValue } from '../../src/units.ts'

const SEED = 20261125
const RUNS = 1000

const spaces = fc.constantFrom(' ', '  ', ' | ', ', ')
const dances = fc.constantFrom(...danceList)

/** Signs with their beat values: what is read must be these values again. */
type Written = { readonly text: string; readonly values: readonly number[] }

/**
 * A timing in counts, from the beats on which its signs fall: on a count, on its & or on its a. Beats that a step lasts
 * over are written in brackets; the first of them, after a count, may be tied to it.
 */
function inCounts(
  onsets: readonly number[],
  beats: number,
  bar: number,
  first: number,
  between: string,
  tied: boolean,
): Written {
  const words = onsets.map((onset, index) => {
    const end = onsets[index + 1] ?? beats
    const sign = { 0: String(((first - 1 + onset) % bar) + 1), 0.5: '&', 0.75: 'a' }[onset % 1] ?? '?'
    const over: number[] = []
    for (let held = Math.floor(onset) + 1; held < end; held++) over.push(((first - 1 + held) % bar) + 1)
    const [next, ...rest] = over
    const brackets = (counts: readonly number[]) => counts.map((count) => ` (${count})`).join('')
    return tied && next !== undefined && onset % 1 === 0 ? `${sign}-${next}${brackets(rest)}` : sign + brackets(over)
  })
  return { text: words.join(between), values: onsets.map((onset, index) => (onsets[index + 1] ?? beats) - onset) }
}

test(`readTiming(text) gives back the beat values that a timing in counts was made from (seed ${SEED})`, () => {
  const place = fc.record({ beat: fc.nat(11), part: fc.constantFrom(0, 0.5, 0.75) })
  const cases = fc.record({
    dance: dances,
    places: fc.uniqueArray(place, { maxLength: 16, selector: ({ beat, part }) => beat + part }),
    beats: fc.integer({ min: 12, max: 14 }),
    first: fc.nat(3),
    between: spaces,
    tied: fc.boolean(),
    lead: fc.constantFrom('' as const, '&' as const, 'a' as const, '&a' as const),
    times: fc.integer({ min: 1, max: 8 }),
  })
  fc.assert(
    fc.property(cases, ({ dance, places, beats, first, between, tied, lead, times }) => {
      const onsets = [...new Set([0, ...places.map(({ beat, part }) => beat + part)])].sort((a, b) => a - b)
      const firstCount = (first % dance.beatsPerBar) + 1
      const { text, values } = inCounts(onsets, beats, dance.beatsPerBar, firstCount, between, tied)
      // Before the first count, an & or a takes nothing from anything.
      const before = { '': [], '&': [0.5], a: [0.25], '&a': [0.25, 0.25] }[lead]
      expect(readTiming(lead + between + text, dance)).toMatchObject({
        ok: true,
        values: [...before, ...values].map((value) => value * 48),
        firstCount: firstCount - before.reduce((sum, value) => sum + value, 0),
      })
      // Whole bars can be danced again.
      if (beats % dance.beatsPerBar !== 0 || times === 1) return
      expect(readTiming(`${text}${between}×${times}`, dance)).toMatchObject({
        ok: true,
        values: Array.from({ length: times }, () => values.map((value) => value * 48)).flat(),
        firstCount,
      })
    }),
    { seed: SEED, numRuns: RUNS },
  )
})

test(`readTiming("m–n") names the counts from m to n, as if each were written (seed ${SEED})`, () => {
  const cases = fc.record({
    dance: dances,
    from: fc.integer({ min: 1, max: 14 }),
    more: fc.integer({ min: 2, max: 15 }),
    dash: fc.constantFrom('-', '–', ' – '),
    rest: fc.constantFrom('', '&', ' a'),
  })
  fc.assert(
    fc.property(cases, ({ dance, from, more, dash, rest }) => {
      const to = from + more
      const last = dance.id === 'paso doble' ? 16 : dance.beatsPerBar
      // Two digits are a count only behind the one before.
      fc.pre(from < 10 && to <= last)
      const counts = Array.from({ length: more + 1 }, (_, index) => from + index)
      const written = readTiming(counts.join(' ') + rest, dance)
      expect(written.ok).toBe(true)
      expect(readTiming(`${from}${dash}${to}${rest}`, dance)).toEqual(written)
    }),
    { seed: SEED, numRuns: RUNS },
  )
})

test(`readTiming(text) gives back the beat values that slows and quicks were made from (seed ${SEED})`, () => {
  const quarters = ['a', '&', '&a'] as const
  const cases = fc.record({
    dance: fc.constantFrom(...danceList.filter(({ signs }) => signs.S !== null)),
    steps: fc.array(
      fc.record({ letter: fc.constantFrom('S' as const, 'Q' as const), rest: fc.constantFrom('', ...quarters) }),
      {
        minLength: 1,
        maxLength: 20,
      },
    ),
    between: fc.oneof(spaces, fc.constant('')),
  })
  fc.assert(
    fc.property(cases, ({ dance, steps, between }) => {
      const words: string[] = []
      const values: number[] = []
      for (const { letter, rest } of steps) {
        const worth = dance.signs[letter] ?? 0
        // A samba quick has half a beat, of which an & would leave nothing.
        const splits = rest.startsWith('&') && worth <= beatValue(1, 2) ? '' : rest
        const taken = { '': [], a: [12], '&': [24], '&a': [12, 12] }[splits]
        words.push(letter + splits)
        values.push(worth - taken.reduce((sum, part) => sum + part, 0), ...taken)
      }
      expect(readTiming(words.join(between), dance)).toMatchObject({ ok: true, values, firstCount: dance.firstCount })
    }),
    { seed: SEED, numRuns: RUNS },
  )
})
