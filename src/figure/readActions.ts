import type { Dance } from '../dance/dance.ts'
import { type Fault, fault } from '../problem.ts'
import { beatValue, radians, type Share, share, sumOfValues } from '../units.ts'
import type { Action, Direction, FootTurn, OwnMoments, Timing } from './figure.ts'
import { leadingFoot, turnKindKeys, type WrittenAction } from './figureSchema.ts'
import type { Finding } from './finding.ts'
import { type MomentKey, momentKeys, readMoments } from './readMoments.ts'
import type { Shape } from './readShape.ts'
import { usualWeights } from './usualWeights.ts'

const onlyPart: readonly Direction[] = ['tap', 'point']
const nothing: readonly Direction[] = ['hold', 'brush']

/** A hold or brush carries nothing; a tap or point may carry a part. */
function judgeWeight(direction: Direction, weight: Share): Fault | null {
  const most = nothing.includes(direction) ? 0 : 1
  const tooMuch = weight > most || (onlyPart.includes(direction) && weight === 1)
  return tooMuch ? fault('weight-on-hold', { direction, value: `${Math.round(weight * 100)} %` }) : null
}

/** What a heel turn or heel pull ends in: the other foot comes beside, or a little to the side. */
const heelTurns: readonly Direction[] = [
  ...(['close', 'close slightly forward', 'close slightly back'] as const),
  ...(['side', 'slightly side'] as const),
]

/** Directions in which a foot can lie on or over the line of the other. */
const ahead: readonly Direction[] = [
  ...(['forward', 'slightly forward', 'forward and slightly side', 'diagonally forward'] as const),
  ...(['back', 'slightly back', 'back and slightly side', 'diagonally back'] as const),
]

/** A turn on the foot needs all of the weight or none on the new foot (a twist also a part); a heel turn needs a close. */
function judgeFootTurn({ kind }: FootTurn, direction: Direction, weight: Share): Fault | null {
  const isPart = weight > 0 && weight < 1
  const wrong = kind === 'heel turn' ? !heelTurns.includes(direction) : kind === 'pivot' && isPart
  return wrong ? fault('foot-turn-impossible', { key: kind, direction, weight }) : null
}

/**
 * The actions of a figure, as far as they are sound.
 * @param timing the figure's first: own moments are counts, and are fixed by it; null when there is none to go by
 * @param dance null when it is not known
 */
export function readActions(
  shape: Shape,
  timing: Timing | null,
  dance: Dance | null,
): { readonly actions: readonly Action[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = []

  function momentsOf(index: number): OwnMoments {
    const written = shape.written.actions[index]
    if (!written || !dance) return {}
    const texts: Partial<Record<MomentKey, string>> = {}
    for (const key of momentKeys) {
      const text = shape.isSound(['actions', index, key]) ? written[key] : undefined
      if (text !== undefined) texts[key] = text
    }
    const called = timing ? beatValue(timing.firstCount - 1) + sumOfValues(timing.values.slice(0, index)) : 0
    const { moments, faults } = readMoments(texts, called, dance)
    for (const { fault: found, key } of faults) {
      // Without a timing nobody knows when the action is called, and so which count is the nearest.
      if (timing || found.code === 'moment-not-a-count') findings.push({ fault: found, path: ['actions', index, key] })
    }
    return moments
  }

  /** The one turn on the foot; a second one is a problem. */
  function footTurnOf(action: WrittenAction, index: number): FootTurn | null {
    const given = turnKindKeys.filter((kind) => shape.isSound(['actions', index, kind]) && action[kind] !== undefined)
    const [first, second] = given
    if (first === undefined) return null
    if (second !== undefined) {
      findings.push({ fault: fault('foot-turns-many', { first, second }), path: ['actions', index, second] })
    }
    const by = action[first] ?? radians(0)
    return by === 0 ? null : { kind: first, by }
  }

  const written = shape.isRefused(['actions']) || shape.isRefused([]) ? [] : (shape.written.actions ?? [])
  const actions = written.map((action, index): Action => {
    const has = (key: string) => shape.isSound(['actions', index, key])
    const direction = has('direction') ? action.direction : 'hold'
    const weight = has('weight') ? action.weight : undefined
    const wrong = has('direction') && weight !== undefined ? judgeWeight(direction, weight) : null
    if (wrong) findings.push({ fault: wrong, path: ['actions', index, 'weight'] })
    const known = has('direction')
    const taken = weight ?? share(usualWeights[direction])
    const footTurn = footTurnOf(action, index)
    const impossible = known && footTurn ? judgeFootTurn(footTurn, direction, taken) : null
    if (impossible && footTurn) findings.push({ fault: impossible, path: ['actions', index, footTurn.kind] })
    const placed = (has('placed') ? action.placed : undefined) ?? null
    if (known && placed !== null && !ahead.includes(direction)) {
      findings.push({ fault: fault('placed-impossible', { placed, direction }), path: ['actions', index, 'placed'] })
    }
    const leading = has('leading') ? action.leading : undefined
    return {
      direction,
      size: (has('size') ? action.size : undefined) ?? null,
      turn: (has('turn') ? action.turn : undefined) ?? radians(0),
      footTurn,
      placed,
      position: (has('position') ? action.position : undefined) ?? null,
      leading: leading === undefined ? null : leadingFoot(leading),
      alignment: (has('alignment') ? action.alignment : undefined) ?? null,
      footwork: (has('footwork') ? action.footwork : undefined) ?? '',
      note: (has('note') ? action.note : undefined)?.trim() ?? '',
      weight: taken,
      moments: momentsOf(index),
    }
  })
  return { actions, findings }
}
