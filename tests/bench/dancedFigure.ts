import type { Figure } from '../../src/figure/figure.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { type Floor, layOutFloor } from '../../src/pose/floor.ts'
import { schedule } from '../../src/timing/schedule.ts'
import type { Curve } from '../../src/transfer/curve.ts'
import { perform } from '../../src/transfer/perform.ts'
import { radians } from '../../src/units.ts'
import { type ExampleAction, exampleFigure } from '../tools/exampleFigure.ts'

/** A figure danced in time: all that a pose is asked of. */
export type Danced = { readonly floor: Floor; readonly curve: Curve }

const EIGHTH = Math.PI / 4

/** Three bars of slow, quick, quick: walks, steps to the side with a turn, and two closes. */
const STEPS: readonly ExampleAction[] = [
  'forward',
  { direction: 'side', turn: radians(EIGHTH) },
  { direction: 'back', turn: radians(EIGHTH) },
  'back',
  { direction: 'side', turn: radians(-EIGHTH) },
  'close',
  'forward',
  { direction: 'side and slightly forward', turn: radians(2 * EIGHTH) },
  'close',
]
const VALUES = [2, 1, 1, 2, 1, 1, 2, 1, 1]

/** The nine steps again and again, until there are as many actions as wanted. The parser stops at 500: this is built. */
export function stepsOf(actions: number): Figure {
  const at = <T>(list: readonly T[], index: number) => list[index % list.length] as T
  const indices = Array.from({ length: actions }, (_, index) => index)
  return exampleFigure(
    'foxtrot',
    indices.map((index) => at(VALUES, index)),
    indices.map((index) => at(STEPS, index)),
  )
}

export function dancedFigure(figure: Figure): Danced {
  const { curve, carried } = perform(schedule(figure), { kind: 'in time' })
  const touches = figure.actions.map(() => null)
  return { curve, floor: layOutFloor(figure, carried, touches, bodyWithFeet(1)) }
}
