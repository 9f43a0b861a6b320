import type { Convention, Dance } from '../dance/dance.ts'
import type { BeatValue, Metres } from '../units.ts'
import type { Direction, Figure } from './figure.ts'
import { plainAction } from './plainAction.ts'

/** One action of a figure that is made here and not read from a file. */
export type PlainStep = {
  readonly direction: Direction
  /** null = the usual size. */
  readonly size: Metres | null
  /** As the trade writes it: "S", "1". */
  readonly sign: string
  readonly value: BeatValue
}

/** Steps of a dance in no room, without turns: what an explanation is shown on. The right foot goes first, from closed feet. */
export function walkingFigure(dance: Dance, convention: Convention, steps: readonly PlainStep[]): Figure {
  const signs = steps.map(({ sign }) => sign)
  const source = { provenance: 'own judgement', text: '' } as const
  const values = steps.map(({ value }) => value)
  return {
    id: 'walks',
    title: signs.join(' '),
    dance: dance.id,
    role: 'leader',
    firstFoot: 'right',
    starts: null,
    ends: null,
    freeFoot: null,
    convention,
    timings: [{ text: signs.join(' '), signs, values, firstCount: 1, source }],
    actions: steps.map(({ direction, size }) => ({ ...plainAction(direction), size })),
    stepsSource: source,
    tracks: { bodyTurn: [], rise: [], sway: [] },
    about: '',
  }
}
