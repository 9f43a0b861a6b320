import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Edit, editDescription } from '../../src/figure/editDescription.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import { writeFigure } from '../../src/figure/writeFigure.ts'
import { generatedDescription } from '../tools/generateDescription.ts'

const TEXT = `# by Tomke
overfoot: 2
title: 'Walks'   # of the warm-up
colour: red      # nobody knows this key
dance: foxtrot
role: leader
first foot: right
timing: S Q Q
actions:
  # the first
  - forward      # a walk
  - direction: side
    size: 40 cm  # small
    teacher: Idony
  - { direction: close, footwork: HT }
`

const figureOf = (text: string) => {
  const result = parseFigure(text, 'x')
  if (!result.ok) throw new Error(JSON.stringify(result.problems) + text)
  return result.figure
}

describe('editDescription(text, edits)', () => {
  test.each<[string, Edit, from: string, to: string]>([
    ['a value', { kind: 'set', path: ['title'], value: 'Three walks' }, "'Walks'", 'Three walks'],
    ['a value that needs marks', { kind: 'set', path: ['title'], value: 'Walks: three' }, "'Walks'", '"Walks: three"'],
    ['a key of an action', { kind: 'set', path: ['actions', 1, 'size'], value: '50 cm' }, '40 cm', '50 cm'],
    [
      'a new key of an action',
      { kind: 'set', path: ['actions', 1, 'turn'], value: '1/4 right' },
      '- direction: side\n',
      '- direction: side\n    turn: 1/4 right\n',
    ],
    ['a bare word', { kind: 'set', path: ['actions', 0], value: 'back' }, '- forward ', '- back '],
    [
      'a new key of a bare word',
      { kind: 'set', path: ['actions', 0, 'weight'], value: 'half' },
      '- forward ',
      '- { direction: forward, weight: half } ',
    ],
    [
      'a new key in braces',
      { kind: 'set', path: ['actions', 2, 'note'], value: 'slow, please' },
      'footwork: HT }',
      'footwork: HT, note: "slow, please" }',
    ],
    [
      'a new key of the figure',
      { kind: 'set', path: ['about'], value: 'Look at 2.' },
      'overfoot: 2\n',
      'overfoot: 2\nabout: Look at 2.\n',
    ],
    [
      'a source of the timing',
      { kind: 'set', path: ['timing', 'source'], value: 'common practice' },
      'timing: S Q Q',
      'timing: { say: S Q Q, source: common practice }',
    ],
    ['a key taken out', { kind: 'remove', path: ['actions', 1, 'size'] }, '    size: 40 cm  # small\n', ''],
    [
      'the key on the dash’s line',
      { kind: 'remove', path: ['actions', 1, 'direction'] },
      'direction: side\n    size',
      'size',
    ],
    ['a key in braces taken out', { kind: 'remove', path: ['actions', 2, 'footwork'] }, ', footwork: HT', ''],
    ['an action taken out', { kind: 'remove', path: ['actions', 0] }, '  - forward      # a walk\n', ''],
    [
      'an action put in',
      { kind: 'insert', path: ['actions', 1], value: 'back' },
      '  - direction',
      '  - back\n  - direction',
    ],
    [
      'an action put at the end',
      { kind: 'insert', path: ['actions', 9], value: { direction: 'side', turn: '1/8 left' } },
      'HT }\n',
      'HT }\n  - { direction: side, turn: 1/8 left }\n',
    ],
  ])('changes only %s', (_, edit, from, to) => {
    expect(TEXT).toContain(from)
    expect(editDescription(TEXT, [edit])).toBe(TEXT.replace(from, () => to))
    // Line ends and a byte order mark stay as they are.
    const windows = `\uFEFF${TEXT.replace(/\n/g, '\r\n')}`
    expect(editDescription(windows, [edit])).toBe(`\uFEFF${TEXT.replace(from, () => to).replace(/\n/g, '\r\n')}`)
  })

  test('without edits gives the same bytes', () => {
    for (const text of [TEXT, `\uFEFF${TEXT}`, TEXT.replace(/\n/g, '\r\n'), `${TEXT}   \n\n# end`]) {
      expect(editDescription(text, [])).toBe(text)
    }
  })

  test.each<[Edit, RegExp]>([
    [{ kind: 'set', path: ['actions', 7], value: 'back' }, /nothing at/],
    [{ kind: 'set', path: ['nobody', 'x'], value: 'y' }, /nothing at/],
    [{ kind: 'set', path: ['actions'], value: 'y' }, /nothing at/],
    [{ kind: 'remove', path: ['about'] }, /nothing at/],
    [{ kind: 'insert', path: ['title', 0], value: 'x' }, /nothing at/],
  ])('%j leads nowhere', (edit, says) => {
    expect(() => editDescription(TEXT, [edit])).toThrow(says)
  })

  test('a text that cannot be read is not touched', () => {
    expect(() => editDescription('a: [', [{ kind: 'set', path: ['a'], value: 'b' }])).toThrow(RangeError)
  })
})

const RUNS = { numRuns: 200, seed: 20261125 } as const
const MINUTE = { timeout: 60_000 } as const

test(
  'editDescription(text, edits): the edit and nothing else, on generated figures with remarks and unknown keys',
  MINUTE,
  () => {
    fc.assert(
      fc.property(generatedDescription, fc.nat(), fc.constantFrom('back', 'side', 'hold'), (figure, at, direction) => {
        const text = `# kept\n${writeFigure(figure)}colour: red # kept too\n`
        const index = at % figure.actions.length
        const titled = editDescription(text, [{ kind: 'set', path: ['title'], value: 'Another: one' }])
        expect(figureOf(titled)).toEqual({ ...figureOf(text), title: 'Another: one' })
        const noted = editDescription(text, [
          { kind: 'set', path: ['overfoot'], value: '2' },
          { kind: 'set', path: ['actions', index, 'note'], value: direction },
        ])
        const { actions } = figureOf(text)
        expect(figureOf(noted).actions).toEqual(
          actions.with(index, { ...(actions[index] as (typeof actions)[number]), note: direction }),
        )
        const back = editDescription(noted, [{ kind: 'set', path: ['actions', index, 'note'], value: 'x' }])
        for (const edited of [titled, noted, back]) {
          expect(edited).toContain('# kept\n')
          expect(edited).toContain('colour: red # kept too\n')
        }
      }),
      RUNS,
    )
  },
)
