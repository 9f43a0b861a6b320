import { expect, test } from 'vitest'
import { radians, share } from '../../src/units.ts'
import { actionWords } from '../../src/words/actionWords.ts'
import { type ExampleAction, exampleFigure } from '../tools/exampleFigure.ts'

const said = (action: ExampleAction): string => {
  const [made] = exampleFigure('waltz', [1], [action]).actions
  if (made === undefined) throw new Error('no action')
  return actionWords(made, 'right')
}
const turns = (part: number) => radians(part * 2 * Math.PI)

test.each<[ExampleAction, string]>([
  ['forward', 'RF forward'],
  ['close', 'RF closes'],
  ['lock behind', 'RF locks behind'],
  ['half close', 'RF half closes, part weight'],
  ['hold', 'hold'],
  ['in place', 'RF in place'],
  [
    {
      direction: 'forward',
      placed: 'in CBMP',
      position: 'outside partner',
      leading: 'right',
      turn: turns(1 / 4),
      alignment: { way: 'backing', to: 'diagonally to centre' },
      footwork: 'HT',
    },
    'RF forward in CBMP, outside partner, right side leading, 1/4 to right, backing diagonally to centre, HT',
  ],
  [{ direction: 'back', footTurn: { kind: 'pivot', by: turns(-1 / 2) } }, 'RF back, pivot 1/2 to left'],
  [{ direction: 'close', footTurn: { kind: 'heel turn', by: turns(3 / 8) } }, 'RF closes, heel turn 3/8 to right'],
  [{ direction: 'side', turn: turns(1) }, 'RF side, 1 to right'],
  [{ direction: 'side', turn: turns(1 / 16) }, 'RF side, 1/16 to right'],
  [{ direction: 'forward', weight: share(0.5) }, 'RF forward, part weight'],
])('actionWords(%j, right)', (action, words) => {
  expect(said(action)).toBe(words)
})
