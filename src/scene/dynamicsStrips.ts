import type { Convention, Dance } from '../dance/dance.ts'
import { type PlainStep, walkingFigure } from '../figure/walkingFigure.ts'
import { schedule as scheduleOf } from '../timing/schedule.ts'
import { perform } from '../transfer/perform.ts'
import type { Way } from '../transfer/way.ts'
import { type BeatValue, beatValue } from '../units.ts'
import { type StripLine, strip } from './strip.ts'

/** How the weight travels between the checkpoints. */
export type Dynamics = 'even' | 'swelling' | 'arrested'

export type DynamicsStrips = {
  readonly from: number
  readonly to: number
  /** What is called, and when. */
  readonly counts: readonly { readonly text: string; readonly at: number }[]
  readonly lines: readonly {
    readonly kind: Dynamics
    readonly points: StripLine['points']
    /** The places where the plan has the weight at its checkpoints, read off this line. */
    readonly dots: StripLine['points']
  }[]
}

const WAYS: Readonly<Record<Dynamics, Way>> = {
  even: { kind: 'in time' },
  swelling: { kind: 'swelling' },
  arrested: { kind: 'arrested' },
}
const KINDS: readonly Dynamics[] = ['even', 'swelling', 'arrested']
const SAME = 1e-9

/** S Q Q, or one bar of beats where the dance has no slows and quicks. */
function stepsOf({ signs: { S, Q }, beatsPerBar }: Dance): readonly PlainStep[] {
  const step = (sign: string, value: BeatValue): PlainStep => ({ direction: 'forward', size: null, sign, value })
  if (S !== null && Q !== null) return [step('S', S), step('Q', Q), step('Q', Q)]
  return Array.from({ length: beatsPerBar }, (_, k) => step(String(k + 1), beatValue(1)))
}

/** The same walks danced with three kinds of dynamics: the same moments, another way between them. */
export function dynamicsStrips(dance: Dance, convention: Convention): DynamicsStrips {
  const schedule = scheduleOf(walkingFigure(dance, convention, stepsOf(dance)))
  const panels = KINDS.map((kind) => ({ way: WAYS[kind], performance: perform(schedule, WAYS[kind]) }))
  const ideal = perform(schedule, WAYS.even)
  const { from, to, knots } = ideal.curve
  const { lines } = strip({ dance, schedule, ideal, panels, range: { from, to } })
  const isCheckpoint = (t: number): boolean => knots.some((knot) => Math.abs(knot.t - t) < SAME)
  return {
    from,
    to,
    counts: schedule.actions.map(({ sign, called }) => ({ text: sign, at: called })),
    lines: lines.map(({ panel, points }) => ({
      kind: KINDS[panel] as Dynamics,
      points,
      dots: points.filter(({ t }) => isCheckpoint(t)),
    })),
  }
}
