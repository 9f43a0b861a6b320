import { describe, expect, test } from 'vitest'
import type { Figure } from '../../src/figure/figure.ts'
import { parseFigure } from '../../src/figure/parse.ts'

/** A natural spin turn as a chart has it (the steps from memory), with all that an action and a figure can say. */
const TEXT = `overfoot: 2
title: Spin turn, last half
dance: waltz
role: leader
first foot: left
starts: backing line of dance
ends: backing centre
free foot: back
timing: 1 2 3
timing source: published, a list of figures
steps source: from memory
actions:
  - direction: back
    pivot: 1/2 right
    alignment: backing line of dance
    footwork: THT
    note: The pivot is on the ball of the foot.
  - direction: forward
    placed: in CBMP
    position: closed
    leading: right side
    alignment: facing line of dance
    footwork: HT
  - direction: side and slightly back
    turn: 1/4 right
    alignment: backing centre
    footwork: TH
body turn:
  - { at: 1, to: none }
  - { at: 2, to: 1/2 right }
rise and fall:
  - { at: 2, to: down }
  - { at: 3, to: up }
  - { at: 3 &, to: 30 % }
  - { at: 1, to: down }
sway:
  - { at: "bar 1, 2 &", to: slightly left }
`

function figureOf(text: string): Figure {
  const result = parseFigure(text, 'spin.figure.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  expect(result.warnings).toEqual([])
  return result.figure
}

describe('parseFigure(text, file): all that a chart says', () => {
  const figure = figureOf(TEXT)

  test('turns on the foot, placements, positions, alignments, footwork, notes', () => {
    expect(figure.actions).toMatchObject([
      {
        direction: 'back',
        footTurn: { kind: 'pivot', by: Math.PI },
        alignment: { way: 'backing', to: 'line of dance' },
        footwork: 'THT',
        note: 'The pivot is on the ball of the foot.',
      },
      { direction: 'forward', footTurn: null, placed: 'in CBMP', position: 'closed', leading: 'right' },
      { direction: 'side and slightly back', turn: Math.PI / 2, placed: null, position: null, leading: null },
    ])
    expect(figure).toMatchObject({ freeFoot: 'back', stepsSource: { provenance: 'from memory' } })
  })

  test('tracks in beats from the first action: each count is the first of its name after the entry before', () => {
    expect(figure.tracks.bodyTurn).toEqual([
      { at: 0, value: 0 },
      { at: 48, value: Math.PI },
    ])
    expect(figure.tracks.rise).toEqual([
      { at: 48, value: 0 },
      { at: 96, value: 1 },
      { at: 120, value: 0.3 },
      { at: 144, value: 0 },
    ])
    expect(figure.tracks.sway).toEqual([{ at: 72, value: -0.5 }])
  })

  test('alignments agree with the turns: a pivot comes after its own step is placed, a heel turn before', () => {
    const heel = TEXT.replace('pivot: 1/2 right\n    alignment: backing line of dance', 'turn: none').replace(
      'side and slightly back\n    turn: 1/4 right',
      'close\n    heel turn: 3/4 right',
    )
    const { actions } = figureOf(heel.replace('alignment: facing line of dance', 'alignment: backing line of dance'))
    expect(actions[2]).toMatchObject({ footTurn: { kind: 'heel turn' }, alignment: { way: 'backing', to: 'centre' } })
  })

  test('a pivot of none is none', () => {
    const none = TEXT.replace('pivot: 1/2 right', 'pivot: none').replace(
      'facing line of dance',
      'backing line of dance',
    )
    const result = parseFigure(none.replace('starts: backing line of dance\n', ''), 'x')
    expect(result.ok && result.figure.actions[0]?.footTurn).toBeNull()
  })

  test('own moments keep their distance from the count in every timing, and clashes are found in each', () => {
    const text = `overfoot: 2
title: Two timings
dance: waltz
role: leader
first foot: left
timing: [1 2 & 3, 1 & 2 3]
actions:
  - forward
  - { direction: side, full: 2 & }
  - { direction: close, leaves: 2 & }
  - side
`
    const ok = parseFigure(text, 'two')
    // In 1 & 2 3 the second action is called on 1 &: full at 2; the third on 2: leaves at 2.
    expect(ok.ok && ok.warnings).toEqual([])
    const clash = parseFigure(text.replace('leaves: 2 &', 'leaves: 2'), 'two')
    expect(clash.ok ? [] : clash.problems.map(({ code, values }) => [code, values])).toEqual([
      ['moments-clash', expect.objectContaining({ timing: '1 2 & 3', before: 2 })],
      ['moments-clash', expect.objectContaining({ timing: '1 & 2 3', before: 2 })],
    ])
  })
})
