import type { Dance } from '../dance/dance.ts'
import { type Fault, fault } from '../problem.ts'
import { beatValue, radians, type Share, share, sumOfValues } from '../units.ts'
import type { Action, Direction, OwnMoments, Timing } from './figure.ts'
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

  const written = shape.isRefused(['actions']) || shape.isRefused([]) ? [] : (shape.written.actions ?? [])
  const actions = written.map((action, index): Action => {
    const has = (key: string) => shape.isSound(['actions', index, key])
    const direction = has('direction') ? action.direction : 'hold'
    const weight = has('weight') ? action.weight : undefined
    const wrong = has('direction') && weight !== undefined ? judgeWeight(direction, weight) : null
    if (wrong) findings.push({ fault: wrong, path: ['actions', index, 'weight'] })
    return {
      direction,
      size: (has('size') ? action.size : undefined) ?? null,
      turn: (has('turn') ? action.turn : undefined) ?? radians(0),
      footTurn: null,
      placed: null,
      position: null,
      leading: null,
      alignment: null,
      footwork: '',
      note: '',
      weight: weight ?? share(usualWeights[direction]),
      moments: momentsOf(index),
    }
  })
  return { actions, findings }
}
