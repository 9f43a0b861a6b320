import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import type { Figure } from '../../src/figure/figure.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import { writeFigure } from '../../src/figure/writeFigure.ts'
import { type BeatValue, metres, radians } from '../../src/units.ts'
import { generatedDescription } from '../tools/generateDescription.ts'
import { readSources } from '../tools/readSources.ts'

const RUNS = { numRuns: 1000, seed: 20261125 } as const
const MINUTE = { timeout: 60_000 } as const

const figureOf = (text: string): Figure => {
  const result = parseFigure(text, 'made.figure.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems) + text)
  return result.figure
}

type Said = { readonly dance?: string; readonly timing?: string; readonly actions?: string; readonly more?: string }

const textOf = ({ dance = 'waltz', timing = '1 2 3', actions = '[forward, side, close]', more = '' }: Said): string =>
  `overfoot: 2\ntitle: Walks\ndance: ${dance}\nrole: leader\nfirst foot: right\ntiming: ${timing}\nactions: ${actions}\n${more}`

const rewritten = (said: Said): string => writeFigure(figureOf(textOf(said)))

/** The course, the charts of the trade and a frozen file of version 1. */
const files = {
  ...(await readSources('figures-demo', /\.figure\.yaml$/)),
  ...(await readSources('tests', /\.figure\.yaml$/)),
}

describe('writeFigure(figure)', () => {
  test.each(Object.entries(files))('reads back as %s', (_, text) => {
    const figure = figureOf(text)
    const written = writeFigure(figure)
    expect(figureOf(written)).toEqual(figure)
    expect(writeFigure(figureOf(written))).toBe(written)
  })

  test.each([
    { actions: '[{ direction: forward, size: 33.3333 cm }, { direction: side, size: 0.0001 cm }, close]' },
    { actions: '[{ direction: forward, size: 1.2345 m, weight: 500/999 }, side, close]' },
    { actions: '[{ direction: forward, turn: 17/999 right }, { direction: side, turn: 1 998/999 left }, close]' },
    { actions: '[{ direction: forward, leaves: 3 &, full: 2 & }, side, close]' },
    { timing: '{ say: 1 2 3, values: 3/4 1/48 16 }' },
    {
      timing: '[{ say: 1 2 3, source: own judgement }, { say: "1 2 3 (hold)", values: 1 2 1 }]',
      actions: '[forward, side, hold]',
    },
    { timing: '[1 2 3, { say: 1 2 3, source: "published: a list, page 3" }]', more: 'timing source: common practice' },
    { timing: '"& 2 3"', more: 'rise and fall: [{ at: 1, to: 33 % }, { at: bar 2 3, to: up }]' },
    { dance: 'tango', timing: '1 & 2', more: 'written in: 2/4' },
    { dance: 'tango', timing: '[1 & 2, Q Q S]', more: 'written in: 2/4' },
    { dance: 'paso doble', timing: '1–3' },
    { dance: 'samba', timing: '1 a 2' },
    { more: `steps source: published:${'x'.repeat(290)}` },
    { more: 'about: |2\n   one\n\n  two  \n    three\n' },
    { more: 'about: "null \\0 \\uFFFD \\u202E \\uD800 \\U000E0001 \\x7F \\x85 \\u2028 \\r\\n \\t end"' },
    { more: 'about: "null"' },
    { more: 'about: "~"' },
  ] satisfies readonly Said[])('says what %j says', (said) => {
    const figure = figureOf(textOf(said))
    const written = writeFigure(figure)
    expect(figureOf(written)).toEqual(figure)
    // Nothing hidden, nothing that a reader takes for damage, and no file that changes when it is saved as UTF-8.
    expect(written).not.toMatch(/[\p{Cf}\p{Zl}\p{Zp}\p{Cs}\0\uFFFD]/u)
  })

  it('writes as a teacher would, in the order of the documentation', () => {
    const said = {
      timing: '{ say: 1 2 3, source: common practice }',
      actions: '[{ note: "Slow: wait", turn: 2/8 right, direction: forward, weight: 50 %, size: 0.4 m }, side, close]',
      more: 'rise and fall: [{ at: "1 &", to: 0 % }, { at: "bar 1, 3", to: up }, { at: "bar 4, 1", to: 30 % }]\nabout: Look.',
    }
    expect(() => rewritten(said)).toThrow('track-outside')
    expect(rewritten({ ...said, more: said.more.replace('bar 4', 'bar 2') })).toBe(`overfoot: 2
title: Walks
dance: waltz
role: leader
first foot: right
timing: 1 2 3
timing source: common practice
about: Look.
actions:
  - direction: forward
    size: 40 cm
    turn: 1/4 right
    weight: half
    note: "Slow: wait"
  - side
  - close
rise and fall:
  - { at: 1 &, to: down }
  - { at: 3, to: up }
  - { at: 1, to: 30 % }
`)
  })

  test.each<[string, Said, version: number]>([
    ['turns and sizes', { actions: '[{ direction: forward, turn: 1/4 left, size: 40 cm }, side, close]' }, 1],
    ['one step over two counts', { dance: 'rumba', timing: '2 3 4-1' }, 1],
    ['a dash over several counts', { dance: 'rumba', timing: '2–4' }, 2],
    ['a timing that begins between two counts', { timing: '"& 1 2"' }, 2],
    ['a new direction', { actions: '[slightly forward, side, close]' }, 2],
    ['a remark on an action', { actions: '[{ direction: forward, note: x }, side, close]' }, 2],
    ['a track', { more: 'sway: [{ at: 1, to: left }]' }, 2],
    ['a start', { more: 'starts: facing wall' }, 1],
    ['an end', { more: 'ends: facing wall' }, 2],
  ])('writes %s in the lowest version that can say it', (_, said, version) => {
    expect(rewritten(said)).toMatch(new RegExp(`^overfoot: ${version}\n`))
  })

  test.each<[string, (figure: Figure) => Figure]>([
    ['a size with too many figures', (it) => withFirst(it, { size: metres(1 / 3) })],
    ['a turn that is no fraction', (it) => withFirst(it, { turn: radians(1) })],
    ['a moment off the counts', (it) => withFirst(it, { moments: { full: 5 as BeatValue } })],
    ['a moment two bars away', (it) => withFirst(it, { moments: { full: (6 * 48) as BeatValue } })],
    [
      'a sway between the five',
      (it) => ({ ...it, tracks: { ...it.tracks, sway: [{ at: 0 as BeatValue, value: 0.3 }] } }),
    ],
    ['a rise of a third', (it) => ({ ...it, tracks: { ...it.tracks, rise: [{ at: 0 as BeatValue, value: 1 / 3 }] } })],
    ['signs that are not the text’s', (it) => ({ ...it, timings: [{ ...it.timings[0], signs: ['1', '2', 'Q'] }] })],
  ])('refuses %s, which no description says', (_, spoilt) => {
    expect(() => writeFigure(spoilt(figureOf(textOf({}))))).toThrow(RangeError)
  })
})

const withFirst = (figure: Figure, change: Partial<Figure['actions'][number]>): Figure => ({
  ...figure,
  actions: figure.actions.map((action, index) => (index === 0 ? { ...action, ...change } : action)),
})

test('parse(write(figure)) is the figure, and writing it again gives the same text', MINUTE, () => {
  fc.assert(
    fc.property(generatedDescription, (figure) => {
      const text = writeFigure(figure)
      const result = parseFigure(text, 'made.figure.yaml')
      expect(result.ok && result.figure).toEqual(figure)
      expect(result.ok && writeFigure(result.figure)).toBe(text)
    }),
    RUNS,
  )
})
