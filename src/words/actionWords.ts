import type { Action, Direction, Foot, TurnKind } from '../figure/figure.ts'
import { alignmentText } from '../figure/readAlignment.ts'
import type { Radians } from '../units.ts'
import { fraction } from './fraction.ts'

const FEET: Readonly<Record<Foot, string>> = { left: 'LF', right: 'RF' }

/** How the trade says a direction after the foot: "RF closes", "LF in place". */
const VERBS: Partial<Readonly<Record<Direction, string>>> = {
  close: 'closes',
  'close slightly forward': 'closes, slightly forward',
  'close slightly back': 'closes, slightly back',
  'half close': 'half closes',
  'cross in front': 'crosses in front',
  'cross behind': 'crosses behind',
  'lock in front': 'locks in front',
  'lock behind': 'locks behind',
  tap: 'taps',
  brush: 'brushes',
  point: 'points',
}

const TURNS: Readonly<Record<TurnKind, string>> = { pivot: 'pivot', twist: 'twist', 'heel turn': 'heel turn' }

/** "3/8 to left". */
function turnWords(by: Radians): string {
  const eighths = Math.abs(by) / (Math.PI / 4)
  const parts = [1, 2, 4, 8, 16, 32].find(
    (part) => Math.abs((eighths * part) / 8 - Math.round((eighths * part) / 8)) < 1e-9,
  )
  const amount =
    parts === undefined
      ? fraction(eighths / 8)
      : parts === 1
        ? String(eighths / 8)
        : `${Math.round((eighths * parts) / 8)}/${parts}`
  return `${amount} to ${by < 0 ? 'left' : 'right'}`
}

/**
 * An action as a chart has it: "RF forward in CBMP, outside partner, 1/4 to right, backing diagonally to centre, HT".
 * @param foot the one that acts
 */
export function actionWords(action: Action, foot: Foot): string {
  const { direction, placed, position, leading, turn, footTurn, alignment, weight, footwork } = action
  const moved =
    direction === 'hold'
      ? 'hold'
      : [FEET[foot], VERBS[direction] ?? direction, ...(placed === null ? [] : [placed])].join(' ')
  return [
    moved,
    position === null || position === 'closed' ? '' : position,
    leading === null ? '' : `${leading} side leading`,
    turn === 0 ? '' : turnWords(turn),
    footTurn === null ? '' : `${TURNS[footTurn.kind]} ${turnWords(footTurn.by)}`,
    weight > 0 && weight < 1 ? 'part weight' : '',
    alignment === null ? '' : alignmentText(alignment),
    footwork,
  ]
    .filter((part) => part !== '')
    .join(', ')
}
