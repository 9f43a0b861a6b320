import { fault } from '../problem.ts'
import { sumOfValues, toBeat } from '../units.ts'
import type { Action, Timing } from './figure.ts'
import type { Finding } from './finding.ts'
import { momentKeys } from './readMoments.ts'

type Last = { readonly key: string; readonly time: number; readonly action: number }

/**
 * Own moments of different actions against each other, in every timing: what an action has set happens after all that
 * the actions before it have set. (In another timing a moment keeps its distance from the action's own count.)
 */
export function checkMoments(actions: readonly Action[], timings: readonly Timing[]): readonly Finding[] {
  const findings: Finding[] = []
  for (const { text, values } of timings) {
    let last: Last | null = null
    for (const [index, { moments }] of actions.entries()) {
      const called = sumOfValues(values.slice(0, index))
      let own: Last | null = null
      for (const key of momentKeys) {
        const moment = moments[key]
        if (moment === undefined) continue
        const time = called + moment
        if (last !== null && own === null && time < last.time) {
          const [earlierAt, laterAt] = [toBeat(last.time as typeof called), toBeat(time as typeof called)]
          const clash = { timing: text, before: last.action, earlier: last.key, earlierAt, later: key, laterAt }
          findings.push({ fault: fault('moments-clash', clash), path: ['actions', index, key] })
        }
        own = { key, time, action: index + 1 }
      }
      if (own !== null && (last === null || own.time >= last.time)) last = own
    }
  }
  return findings
}
