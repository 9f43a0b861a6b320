import type { Dance } from '../dance/dance.ts'
import { type Fault, fault } from '../problem.ts'
import { type BeatValue, beatValue } from '../units.ts'
import { barCounter } from './barCounter.ts'
import { scanTiming, type TimingToken } from './scanTiming.ts'
import { shownText } from './shownText.ts'

/** `at`: where it stands in the timing's text, from 0. */
export type TimingFault = { readonly fault: Fault; readonly at: number }

export type TimingReading =
  | {
      readonly ok: true
      /** One for each action, like the beat values. */
      readonly signs: readonly string[]
      readonly values: readonly BeatValue[]
      readonly firstCount: number
      /** Actions (from 0) that the timing says are holds. */
      readonly holds: readonly { readonly index: number; readonly at: number }[]
    }
  | { readonly ok: false; readonly faults: readonly TimingFault[] }

type Step = { sign: string; value: number }

const BEAT: number = beatValue(1)

/**
 * A timing written the trade's way: "S Q Q", "12&3", "2 3 4-1", "1 (2) 3".
 * A number lasts until the next sign, the last sign until the next count; & and a take their worth from the step before.
 * @param dance what S, Q, & and a are worth, and how many counts a bar has
 * @param given beat values that stand for those of the signs (samba's runs, 1 2 3 as ¾ ½ ¾); the signs are then names,
 * and numbers may jump; null to read the values from the signs
 * @returns all that is wrong when anything is
 */
export function readTiming(text: string, dance: Dance, given: readonly BeatValue[] | null = null): TimingReading {
  const counter = barCounter(dance)
  const steps: Step[] = []
  const holds: { index: number; at: number }[] = []
  const faults: TimingFault[] = []

  const lengthen = (token: TimingToken & { count: number }, tied: boolean): Fault | null => {
    const step = steps.at(-1)
    const wrong = counter.name(token.count, true)
    if (!step) return fault('timing-split-first', { sign: token.text })
    step.value += BEAT
    step.sign += tied ? `-${token.count}` : ` (${token.count})`
    return wrong === null ? null : fault('timing-count-out-of-order', { sign: token.text, expected: wrong })
  }

  const split = (sign: '&' | 'a'): Fault | null => {
    const worth = dance.signs[sign]
    const step = steps.at(-1)
    if (!step) return fault('timing-split-first', { sign })
    const left = step.value
    step.value = Math.max(0, left - worth)
    steps.push({ sign, value: worth })
    return left > worth || given ? null : fault('timing-split-too-long', { sign, left: left / BEAT })
  }

  const take = (token: TimingToken): Fault | null => {
    switch (token.kind) {
      case 'letter': {
        const worth = dance.signs[token.sign]
        counter.pass(worth)
        steps.push({ sign: token.sign, value: worth ?? BEAT })
        return worth === null ? fault('timing-sign-not-of-dance', { sign: token.sign, dance: dance.name }) : null
      }
      case 'count': {
        const expected = counter.name(token.count, false)
        steps.push({ sign: String(token.count), value: BEAT })
        return expected === null ? null : fault('timing-count-out-of-order', { sign: token.text, expected })
      }
      case 'held':
      case 'tied':
        return lengthen(token, token.kind === 'tied')
      case 'split':
        return split(token.sign)
      case 'hold':
        holds.push({ index: steps.length - 1, at: token.at })
        return steps.length > 0 ? null : fault('timing-split-first', { sign: token.text })
      case 'unknown':
        return fault('timing-sign-unknown', { sign: shownText(token.text), position: token.at + 1 })
    }
  }

  for (const token of scanTiming(text, counter.countsOn)) {
    const found = take(token)
    if (found && !(given && found.code === 'timing-count-out-of-order')) faults.push({ fault: found, at: token.at })
  }
  if (given && given.length !== steps.length) {
    const counts = { signs: steps.length, given: given.length }
    faults.push({ fault: fault('values-length', { timing: shownText(text), ...counts }), at: 0 })
  }
  if (faults.length > 0) return { ok: false, faults }
  return {
    ok: true,
    signs: steps.map((step) => step.sign),
    values: given ?? steps.map((step) => beatValue(step.value, BEAT)),
    firstCount: counter.firstCount(),
    holds,
  }
}
