import fc from 'fast-check'
import type { DanceId } from '../../src/dance/dance.ts'
import { danceList } from '../../src/dance/dances.ts'
import type { Direction, Figure, FootTurn, Placed, TurnKind } from '../../src/figure/figure.ts'
import { metres, radians, share } from '../../src/units.ts'
import { type ExampleAction, exampleFigure } from './exampleFigure.ts'

const WEIGHTED: readonly Direction[] = [
  'forward',
  'back',
  'side',
  'slightly forward',
  'slightly back',
  'slightly side',
  'diagonally forward',
  'diagonally back',
  'side and slightly forward',
  'side and slightly back',
  'forward and slightly side',
  'back and slightly side',
  'close',
  'close slightly forward',
  'close slightly back',
  'half close',
  'cross in front',
  'cross behind',
  'lock in front',
  'lock behind',
  'in place',
]
const UNWEIGHTED: readonly Direction[] = ['tap', 'brush', 'point', 'hold']
/** Dances whose own timings have a quarter beat (samba and jive: 1 a 2; trade tables 2b). */
const WITH_QUARTERS: readonly DanceId[] = ['samba', 'jive']

export type FigureWishes = {
  /** Only steps that take all the weight. */
  readonly allWeighted?: boolean
  /** Turns between steps, and on a standing foot. */
  readonly turns?: boolean
}

const PLACED: fc.Arbitrary<Placed | null> = fc.oneof(
  { weight: 5, arbitrary: fc.constant(null) },
  fc.constantFrom('in CBMP' as const, 'across' as const),
)
/** The feet beside each other, or the first one away from the other. */
const FREE_FOOT: fc.Arbitrary<Direction | null> = fc.oneof(
  { weight: 5, arbitrary: fc.constant(null) },
  fc.constantFrom<Direction>('side', 'back', 'forward', 'diagonally back', 'lock behind'),
)

const eighthTurns = fc.integer({ min: -3, max: 3 }).map((eighths) => radians((eighths * Math.PI) / 4))

/** A turn on a standing foot now and then, where turns are wished for. */
function footTurns(wishes: FigureWishes, ...kinds: readonly TurnKind[]): fc.Arbitrary<FootTurn | null> {
  if (wishes.turns !== true) return fc.constant(null)
  const eighths = fc.constantFrom(-4, -3, -2, -1, 1, 2, 3, 4)
  const one = fc
    .tuple(fc.constantFrom(...kinds), eighths)
    .map(([kind, n]): FootTurn => ({ kind, by: radians((n * Math.PI) / 4) }))
  return fc.oneof({ weight: 4, arbitrary: fc.constant(null) }, one)
}

function actions(wishes: FigureWishes): fc.Arbitrary<ExampleAction> {
  const size = fc.option(
    fc.integer({ min: 20, max: 90 }).map((cm) => metres(cm / 100)),
    { nil: null },
  )
  const turn =
    wishes.turns === true
      ? fc.oneof({ weight: 3, arbitrary: fc.constant(radians(0)) }, eighthTurns)
      : fc.constant(radians(0))
  const footTurn = footTurns(wishes, 'pivot', 'twist')
  const walk = fc.record({
    direction: fc.constantFrom(...WEIGHTED),
    size,
    turn,
    footTurn,
    weight: fc.constant(share(1)),
  })
  const line = fc.record({
    direction: fc.constantFrom<Direction>('forward', 'back'),
    size,
    turn,
    footTurn,
    placed: PLACED,
    weight: fc.constant(share(1)),
  })
  const heelTurn = fc.record({
    direction: fc.constant<Direction>('close'),
    turn,
    footTurn: footTurns(wishes, 'heel turn'),
    weight: fc.constant(share(1)),
  })
  const step = fc.oneof({ weight: 6, arbitrary: walk }, { weight: 2, arbitrary: line }, heelTurn)
  if (wishes.allWeighted === true) return step
  const partly = fc.record({
    direction: fc.constantFrom<Direction>('forward', 'back', 'side', 'close'),
    size,
    turn,
    footTurn: footTurns(wishes, 'twist'),
    weight: fc.constantFrom(share(0.25), share(0.5), share(0.75)),
  })
  const none = fc.record({
    direction: fc.constantFrom(...UNWEIGHTED),
    size,
    turn,
    footTurn: footTurns(wishes, 'pivot', 'twist'),
    weight: fc.constant(share(0)),
  })
  return fc.oneof({ weight: 6, arbitrary: step }, { weight: 1, arbitrary: partly }, { weight: 1, arbitrary: none })
}

/** Figures over all ten dances: beat values ½, 1, 1½, 2 and, where the dance has them, ¼ and ¾. */
export function generatedFigure(wishes: FigureWishes = {}): fc.Arbitrary<Figure> {
  const dance = fc.constantFrom(...danceList.map(({ id }) => id).filter((id) => id !== 'exercise'))
  return dance.chain((id) => {
    const values = WITH_QUARTERS.includes(id) ? [0.5, 1, 1.5, 2, 0.25, 0.75] : [0.5, 1, 1.5, 2]
    const one = fc.tuple(fc.constantFrom(...values), actions(wishes))
    return fc
      .tuple(
        fc.array(one, { minLength: 1, maxLength: 10 }),
        fc.constantFrom('left' as const, 'right' as const),
        FREE_FOOT,
      )
      .map(([list, firstFoot, freeFoot]) =>
        exampleFigure(
          id,
          list.map(([value]) => value),
          list.map(([, action]) => action),
          { firstFoot, freeFoot },
        ),
      )
  })
}

/** One thousand cases from a seed that is printed with any failure, and fixed so that the suite is the same each time. */
export const THOUSAND = { numRuns: 1000, seed: 20261125 } as const
