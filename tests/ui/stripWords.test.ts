import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type StripCount, stripWords, wordWidth } from '../../src/ui/stripWords.ts'

/** Bars of music, from the & before the first beat on. @param called of the points in a bar, which are called */
function bars(count: number, beatsPerBar: number, grid: number, called: readonly boolean[], texts: readonly string[]) {
  const length = count * beatsPerBar
  return Array.from({ length: Math.round((length + 0.5) / grid) + 1 }, (_, k): StripCount => {
    const beat = k * grid - 0.5
    const inBar = ((beat % beatsPerBar) + beatsPerBar) % beatsPerBar
    const onCount = Number.isInteger(beat)
    const place = Math.round(inBar / grid)
    return {
      beat,
      onCount,
      barStart: inBar === 0,
      bar: Math.floor(beat / beatsPerBar) + 1,
      called: called[place % called.length] ?? false,
      text: texts[place % texts.length] ?? '·',
    }
  })
}

const some = fc.record({
  count: fc.integer({ min: 1, max: 60 }),
  beatsPerBar: fc.constantFrom(2, 3, 4),
  grid: fc.constantFrom(0.5, 0.25),
  called: fc.array(fc.boolean(), { minLength: 1, maxLength: 16 }),
  texts: fc.array(fc.constantFrom('1', '2', '10', 'S', 'Q', '&', 'a', '·'), { minLength: 1, maxLength: 16 }),
  // From a phone with an hour of music on it to a wall with one bar, in rem.
  width: fc.double({ min: 4, max: 200, noNaN: true }),
})
type Some = typeof some extends fc.Arbitrary<infer T> ? T : never
const pointsOf = ({ count, beatsPerBar, grid, called, texts }: Some) => bars(count, beatsPerBar, grid, called, texts)
const beatWidth = ({ count, beatsPerBar, width }: Some) => width / (count * beatsPerBar + 0.5)

describe('stripWords(points, beatWidth)', () => {
  test('no two words overlap, whatever the count of bars and the width, and none is too small to read', () => {
    fc.assert(
      fc.property(some, (one) => {
        const wide = beatWidth(one)
        const { words, size } = stripWords(pointsOf(one), wide)
        for (const [k, word] of words.entries()) {
          const before = words[k - 1]
          if (before === undefined) continue
          const room = (word.beat - before.beat) * wide
          const wanted = (wordWidth(before, size) + wordWidth(word, size)) / 2
          if (room < wanted) expect.fail(`${before.text} and ${word.text}: ${room} rem, ${wanted} wanted`)
        }
        if (size < 0.74 || size > 1) expect.fail(`size ${size}`)
        if (words.length === 0) expect.fail('nothing is written')
      }),
    )
  })

  test('every bar, word and wide beat has its line; where it is wider, no less is written', () => {
    fc.assert(
      fc.property(some, fc.double({ min: 1, max: 4, noNaN: true }), (one, wider) => {
        const points = pointsOf(one)
        const { words, lines } = stripWords(points, beatWidth(one))
        const lined = new Set(lines)
        for (const { beat } of words) if (!lined.has(beat)) expect.fail(`no line at ${beat}`)
        for (const { beat, barStart } of points) if (barStart && !lined.has(beat)) expect.fail(`no bar at ${beat}`)
        const more = stripWords(points, beatWidth(one) * wider)
        if (more.words.length < words.length || more.lines.length < lines.length) expect.fail('less where it is wider')
      }),
    )
  })

  const quicks = bars(3, 4, 0.5, [true, false], ['1', '&', '2', '&', '3', '&', '4', '&'])
  const written = (beatWide: number) =>
    stripWords(quicks, beatWide)
      .words.map(({ text }) => text)
      .join('')

  test('with room all is written; then the halves give way, then all but the bars, which are numbered', () => {
    expect(written(3)).toBe('&1&2&3&4&1&2&3&4&1&2&3&4&1')
    expect(stripWords(quicks, 3).size).toBe(1)
    expect(written(1.2)).toBe('1234123412341')
    expect(written(0.4)).toBe('1234')
    expect(written(0.2)).toBe('13')
  })

  test('a line for each half beat that is named, none between beats that stand close, and bars alone in the end', () => {
    expect(stripWords(quicks, 3).lines).toHaveLength(26)
    expect(stripWords(quicks, 1.2).lines).toHaveLength(13)
    expect(stripWords(quicks, 0.4).lines).toEqual([0, 4, 8, 12])
  })

  test('a half beat that is called stays longer than the others', () => {
    // 2 3 4 & 1: of the &s one is a step.
    const chasse = bars(
      2,
      4,
      0.5,
      [true, false, true, false, true, false, true, true],
      ['1', '·', '2', '·', '3', '·', '4', '&'],
    )
    const texts = (beatWide: number) =>
      stripWords(chasse, beatWide)
        .words.map(({ text }) => text)
        .join('')
    expect(texts(2.2)).toBe('&1·2·3·4&1·2·3·4&1')
    expect(texts(1.2)).toBe('123412341')
    // Where the others are as wide as it is.
    const ands = chasse.map((point) => (point.text === '·' ? { ...point, text: '& a' } : point))
    expect(
      stripWords(ands, 2.2)
        .words.map(({ text }) => text)
        .join(''),
    ).toBe('&1234&1234&1')
  })
})
