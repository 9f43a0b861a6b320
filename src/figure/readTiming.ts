import type { Dance } from '../dance/dance.ts'
import { type Fault, fault } from '../problem.ts'
import { type BeatValue, beatValue, sumOfValues, toBeat } from '../units.ts'
import { barCounter, LAST_COUNT_ON } from './barCounter.ts'
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
      /** Not whole where the figure begins with an & or a: 0.5 is the & before 1. */
      readonly firstCount: number
      /** Actions (from 0) that the timing says are holds. */
      readonly holds: readonly { readonly index: number; readonly at: number }[]
    }
  | { readonly ok: false; readonly faults: readonly TimingFault[] }

type Step = { sign: string; value: number }
type Token<Kind extends TimingToken['kind']> = TimingToken & { readonly kind: Kind }

const BEAT: number = beatValue(1)
/** No range and no repeat leads beyond as many signs: as many as a figure has actions at the most. */
const MOST_SIGNS = 500
/** "×8": a text with more is a slip of the pen. */
const MOST_TIMES = 8

/**
 * A timing written the trade's way: "S Q Q", "12&3", "2 3 4-1 ×2", "1 (2) 3", "1–8".
 * A number lasts until the next sign, the last sign until the next count; & and a take their worth from the step before.
 * At the very beginning there is none: the figure begins between two counts, and nothing is taken from anything.
 * @param dance what S, Q, & and a are worth, and how many counts a bar has
 * @param given beat values that stand for those of the signs (samba's runs, 1 2 3 as ¾ ½ ¾); the signs are then names,
 * and numbers may jump; null to read the values from the signs
 * @param writtenIn the time signature that counts and given values are in; null = the dance's own. Tango in 2/4: a
 * counted beat is two danced ones and its & one; S, Q and the & after them keep their worth (the IDTA revision cards)
 * @returns all that is wrong when anything is
 */
export function readTiming(
  text: string,
  dance: Dance,
  given: readonly BeatValue[] | null = null,
  writtenIn: string | null = null,
): TimingReading {
  /** Beats danced for each beat that is counted. */
  const danced = dance.written !== null && writtenIn === dance.written.timeSignature ? dance.written.danced : 1
  const counter = barCounter(dance, danced)
  const steps: Step[] = []
  const holds: { index: number; at: number }[] = []
  const faults: TimingFault[] = []
  /** How many steps come before the first letter or count; null until it comes. */
  let leading: number | null = null
  /** Beats held over before the first letter or count that is a step, in 1/48. */
  let heldBefore = 0
  /** What a split's worth is multiplied by: it follows counts, or letters. */
  let unit = 1
  let full = false

  const begin = (unitNow: number): void => {
    unit = unitNow
    if (leading !== null) return
    leading = steps.length
    for (const step of steps) step.value *= unit
  }

  const named = (token: TimingToken, expected: string | null): Fault | null =>
    expected === null || given ? null : fault('timing-count-out-of-order', { sign: token.text, expected })

  const lengthen = (token: Token<'held' | 'dash'>, sign: string): Fault | null => {
    begin(danced)
    const step = steps.at(-1)
    const expected = counter.name(token.count, true)
    if (!step) return fault('timing-split-first', { sign: token.text })
    step.value += BEAT * danced
    step.sign += sign
    if (steps.length === leading) heldBefore += BEAT * danced
    return named(token, expected)
  }

  /** All counts after the one before the dash. */
  const range = (token: Token<'dash'>): Fault | null => {
    const { from, count } = token
    const last = given ? LAST_COUNT_ON : counter.last
    const wrong = fault('timing-range-wrong', { sign: shownText(`${from}${token.text}`) })
    full ||= steps.length + count - from > MOST_SIGNS
    if (full || count <= from || count > last) return wrong
    let inOrder = true
    for (let next = from + 1; next <= count; next++) {
      inOrder = counter.name(next, false) === null && inOrder
      steps.push({ sign: String(next), value: BEAT * danced })
    }
    return inOrder || given ? null : wrong
  }

  const dash = (token: Token<'dash'>): Fault | null => {
    const tied = token.text.startsWith('.') || counter.follows(token.count) || (given && token.count <= token.from + 1)
    return tied ? lengthen(token, `-${token.count}`) : range(token)
  }

  const split = ({ sign }: Token<'split'>): Fault | null => {
    const worth = dance.signs[sign] * unit
    const step = steps.at(-1)
    steps.push({ sign, value: worth })
    if (!step) return null
    const left = step.value
    step.value = Math.max(0, left - worth)
    return left > worth || given ? null : fault('timing-split-too-long', { sign, left: left / BEAT / unit })
  }

  const take = (token: Exclude<TimingToken, Token<'repeat'>>): Fault | null => {
    switch (token.kind) {
      case 'letter': {
        begin(1)
        const worth = dance.signs[token.sign]
        counter.pass(worth === null ? null : worth / danced)
        steps.push({ sign: token.sign, value: worth ?? BEAT })
        return worth === null ? fault('timing-sign-not-of-dance', { sign: token.sign, dance: dance.name }) : null
      }
      case 'count': {
        begin(danced)
        const expected = counter.name(token.count, false)
        steps.push({ sign: String(token.count), value: BEAT * danced })
        return named(token, expected)
      }
      case 'held':
        return lengthen(token, ` (${token.count})`)
      case 'dash':
        return dash(token)
      case 'split':
        return split(token)
      case 'hold':
        holds.push({ index: steps.length - 1, at: token.at })
        return steps.length > 0 ? null : fault('timing-split-first', { sign: token.text })
      case 'unknown':
        return fault('timing-sign-unknown', { sign: shownText(token.text), position: token.at + 1 })
    }
  }

  /** What has been taken, in order, with every round of a repeat. */
  const taken: Exclude<TimingToken, Token<'repeat'>>[] = []

  const repeat = ({ text: sign, times }: Token<'repeat'>): Fault | null => {
    full ||= Math.max(steps.length, taken.length) * times > MOST_SIGNS
    if (full || steps.length === 0 || times < 2 || times > MOST_TIMES)
      return fault('timing-repeat-wrong', { sign: shownText(sign) })
    // What is wrong once need not be said again.
    if (faults.length > 0) return null
    const round = [...taken]
    let found: Fault | null = null
    for (let time = 1; time < times; time++) {
      for (const token of round) {
        taken.push(token)
        found = take(token) ?? found
      }
    }
    return found
  }

  for (const token of scanTiming(text, { beatsPerBar: dance.beatsPerBar / danced, countsOn: counter.countsOn })) {
    let found: Fault | null
    if (token.kind === 'repeat') found = repeat(token)
    else {
      taken.push(token)
      found = take(token)
    }
    if (found) faults.push({ fault: found, at: token.at })
    if (full) break
  }
  if (given && !full && given.length !== steps.length) {
    const counts = { signs: steps.length, given: given.length }
    faults.push({ fault: fault('values-length', { timing: shownText(text), ...counts }), at: 0 })
  }
  if (faults.length > 0) return { ok: false, faults }
  const values =
    given?.map((value) => beatValue(value * danced, BEAT)) ?? steps.map(({ value }) => beatValue(value, BEAT))
  const before = toBeat(sumOfValues(values.slice(0, leading ?? steps.length))) - heldBefore / BEAT
  const firstCount = (counter.firstCount() - 1) * danced + 1 - before
  return { ok: true, signs: steps.map(({ sign }) => sign), values, firstCount, holds }
}
