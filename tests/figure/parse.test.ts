import { describe, expect, test } from 'vitest'
import type { Action, Figure } from '../../src/figure/figure.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import { but, RIGHT } from './problemTable.ts'

function figureOf(text: string, file = 'walks.figure.yaml'): Figure {
  const result = parseFigure(text, file)
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  return result.figure
}

/** The second action, which lies on count 3 of S Q Q, with these lines added. */
const second = (lines: string, text = RIGHT): Action | undefined =>
  figureOf(but('direction: side', `direction: side\n    ${lines}`, text)).actions[1]

const step = (direction: Action['direction']): Action =>
  ({
    ...{ direction, size: null, turn: 0, footTurn: null, placed: null, position: null, leading: null },
    ...{ alignment: null, footwork: '', note: '', weight: 1, moments: {} },
  }) as unknown as Action

describe('parseFigure(text, file)', () => {
  test('gives the figure that the text says', () => {
    expect(figureOf(RIGHT, 'class/three-walks.figure.yaml')).toEqual({
      id: 'three-walks',
      title: 'Three walks',
      dance: 'foxtrot',
      role: 'leader',
      firstFoot: 'right',
      starts: null,
      ends: null,
      freeFoot: null,
      convention: 'split on the count',
      timings: [
        {
          text: 'S Q Q',
          signs: ['S', 'Q', 'Q'],
          values: [96, 48, 48],
          firstCount: 1,
          source: { provenance: 'from memory', text: '' },
        },
      ],
      actions: [step('forward'), step('side'), step('close')],
      stepsSource: null,
      tracks: { bodyTurn: [], rise: [], sway: [] },
      about: '',
    })
  })

  test('reads every key that a figure can have', () => {
    const text = but(
      'timing: S Q Q',
      `starts: backing diagonally to wall against line of dance
convention: full on the count
about: |
  Two lines,
  kept apart.
timing source: "published: a book, page 3"
timing:
  - S  Q Q
  - { say: Q Q S, source: common practice }
  - say: 1 2 3
    values: 3/2, ½ 2`,
    )
    expect(figureOf(text)).toMatchObject({
      starts: { way: 'backing', to: 'diagonally to wall against line of dance' },
      convention: 'full on the count',
      about: 'Two lines,\nkept apart.',
      timings: [
        { text: 'S Q Q', values: [96, 48, 48], source: { provenance: 'published', text: 'a book, page 3' } },
        { text: 'Q Q S', values: [48, 48, 96], source: { provenance: 'common practice', text: '' } },
        { text: '1 2 3', signs: ['1', '2', '3'], values: [72, 24, 96], source: { provenance: 'published' } },
      ],
    })
  })

  test.each([
    ['123', ['1', '2', '3'], [48, 48, 48]],
    ['"123"', ['1', '2', '3'], [48, 48, 48]],
    ['{ say: 123 }', ['1', '2', '3'], [48, 48, 48]],
    ['1 2 3', ['1', '2', '3'], [48, 48, 48]],
  ])('reads the timing %s as counts, never as a number', (timing, signs, values) => {
    expect(figureOf(but('S Q Q', timing, but('foxtrot', 'waltz'))).timings[0]).toMatchObject({ signs, values })
  })

  test('keeps the decimals of 4.10 out of the counts: it is one step on 4 and 1, then a 0 that is no count', () => {
    const result = parseFigure(but('S Q Q', '4.10', but('foxtrot', 'rumba')), 'a.yaml')
    expect(result).toMatchObject({ ok: false, problems: [{ values: { sign: '0', expected: '2' } }] })
  })

  test.each([
    ['1/4 right', Math.PI / 2],
    ['1/8 left', -Math.PI / 4],
    ['3/8 to right', (3 * Math.PI) / 4],
    ['⅜ right', (3 * Math.PI) / 4],
    ['1 1/4 left', (-5 * Math.PI) / 2],
    ['1 right', 2 * Math.PI],
    ['none', 0],
  ])('a turn of %s', (turn, radians) => {
    expect(second(`turn: ${turn}`)?.turn).toBeCloseTo(radians, 12)
  })

  test('a turn of nothing to the left is plain 0', () => {
    expect(second('turn: 0 left')?.turn).toBe(0)
  })

  test.each([
    ['40 cm', 0.4],
    ['40cm', 0.4],
    ['0.4 m', 0.4],
    ['2 m', 2],
  ])('a size of %s', (size, metres) => {
    expect(second(`size: ${size}`)?.size).toBeCloseTo(metres, 12)
  })

  test.each([
    ['full', 1],
    ['none', 0],
    ['half', 0.5],
    ['1/3', 1 / 3],
    ['½', 0.5],
    ['30 %', 0.3],
    ['30%', 0.3],
  ])('a weight of %s', (weight, share) => {
    expect(second(`weight: ${weight}`)?.weight).toBeCloseTo(share, 12)
  })

  test.each(['tap', 'brush', 'point', 'hold'])('a %s carries no weight unless it is said', (direction) => {
    expect(figureOf(but('direction: side', `direction: ${direction}`)).actions[1]?.weight).toBe(0)
  })

  test.each(['tap', 'point'])('a %s may carry a part', (direction) => {
    const text = but('direction: side', `direction: ${direction}\n    weight: 30 %`)
    expect(figureOf(text).actions[1]?.weight).toBeCloseTo(0.3, 12)
  })

  // The second action is called on 3; a bar has four beats.
  test.each([
    ['3', 0],
    ['3 &', 24],
    ['3&', 24],
    ['3 a', 36],
    ['4', 48],
    ['2', -48],
    ['2 a', -12],
    ['2 &', -24],
    // As near before as after: the later.
    ['1', 96],
    ['1 &', -72],
    ['4 a', 84],
  ])('a moment on %s is %d/48 of a beat from count 3', (count, value) => {
    expect(second(`full: ${count}`)?.moments).toEqual({ full: value })
  })

  test('moments are counted from the call, inside a beat as well', () => {
    const text = but('S Q Q', '1 & 2', but('leader', 'follower'))
    // Called on 1 &; 1 a is a quarter of a beat later.
    expect(second('split: 1 a\n    full: 2', text)?.moments).toEqual({ split: 12, full: 24 })
  })

  test('moments follow the first count of a figure that begins on 2', () => {
    const text = but('S Q Q', '2 3 4-1', but('foxtrot', 'rumba'))
    expect(second('leaves: 2 &\n    full: 3', text)?.moments).toEqual({ leaves: -24, full: 0 })
  })

  test('equal moments are in order', () => {
    expect(second('leaves: 2 &\n    touches: 3\n    split: 3\n    full: 3')?.moments).toEqual({
      leaves: -24,
      touches: 0,
      split: 0,
      full: 0,
    })
  })

  test('takes a title of 120 characters, whatever room they take in memory', () => {
    expect(figureOf(but('Three walks', '👣'.repeat(120))).title).toHaveLength(240)
  })

  test('takes a figure of 500 actions', () => {
    const text = `${RIGHT.split('timing:')[0]}timing: ${'Q'.repeat(500)}\nactions:\n${'  - forward\n'.repeat(500)}`
    expect(figureOf(text).actions).toHaveLength(500)
  })

  test('reads the newer directions in a file of version 1', () => {
    expect(figureOf(but('- close', '- lock behind')).actions[2]?.direction).toBe('lock behind')
  })

  test('gives data that JSON keeps as it is', () => {
    const figure = figureOf(but('side', 'side\n    turn: 1/8 left\n    size: 1 m\n    full: 4'))
    expect(JSON.parse(JSON.stringify(figure))).toEqual(figure)
  })

  test.each([
    ['box.figure.yaml', 'box'],
    ['class\\box.yml', 'box'],
    ['box', 'box'],
    ['.figure.yaml', ''],
  ])('the id of %s is "%s"', (file, id) => {
    expect(figureOf(RIGHT, file).id).toBe(id)
  })
})
