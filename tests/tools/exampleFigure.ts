import type { Convention, DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import type { Action, Direction, Figure } from '../../src/figure/figure.ts'
import { plainAction } from '../../src/figure/plainAction.ts'
import { beatValue } from '../../src/units.ts'

export type ExampleAction = Direction | (Partial<Action> & { readonly direction: Direction })

const exampleAction = (example: ExampleAction): Action =>
  typeof example === 'string' ? plainAction(example) : { ...plainAction(example.direction), ...example }

/** A figure made for a test: beat values and directions, the dance's own convention unless another is named. */
export function exampleFigure(
  dance: DanceId,
  values: readonly number[],
  actions: readonly ExampleAction[],
  more: Partial<Figure> & { readonly convention?: Convention } = {},
): Figure {
  return {
    id: 'example',
    title: 'Example',
    dance,
    role: 'leader',
    firstFoot: 'right',
    starts: null,
    ends: null,
    freeFoot: null,
    convention: dances[dance].convention,
    timings: [
      {
        text: values.join(' '),
        signs: values.map(String),
        values: values.map((value) => beatValue(Math.round(value * 48), 48)),
        firstCount: dances[dance].firstCount,
        source: { provenance: 'own judgement', text: '' },
      },
    ],
    actions: actions.map(exampleAction),
    stepsSource: null,
    tracks: { bodyTurn: [], rise: [], sway: [] },
    about: '',
    ...more,
  }
}

/** As many forward walks as there are beat values. */
export const walks = (dance: DanceId, values: readonly number[], more: Partial<Figure> = {}): Figure =>
  exampleFigure(
    dance,
    values,
    values.map(() => 'forward' as const),
    more,
  )

export const HALF_BEATS = (from: number, to: number): number[] =>
  Array.from({ length: Math.round((to - from) * 2) + 1 }, (_, k) => from + k / 2)
