import { plainText } from '../figure/plainText.ts'
import type { Problem, ProblemCode, ProblemValues } from '../problem.ts'
import { beatsInWords } from './fraction.ts'
import { type Advice, yamlWords } from './yamlWords.ts'

const quoted = (text: string | number): string => `“${text}”`

/** "did you mean" where something is near, else what can stand there. */
const instead = (nearest: string, otherwise: string): string =>
  nearest === '' ? otherwise : `Did you mean ${quoted(nearest)}? ${otherwise}`

const many = (count: number, one: string, more = `${one}s`): string => `${count} ${count === 1 ? one : more}`

const KINDS: Readonly<Record<string, string>> = {
  nothing: 'nothing',
  list: 'a list',
  mapping: 'a group of keys with values',
  text: 'a text',
  'text or mapping': 'a text, or keys with values',
  'text, mapping or list': 'a text, or a list of timings',
}
const kind = (name: string): string => KINDS[name] ?? quoted(name)

const UNITS: Readonly<Record<ProblemValues['number-out-of-range']['unit'], (from: number, to: number) => string>> = {
  m: (from, to) => `from ${from} to ${to} m`,
  turn: (from, to) => `from ${from} to ${many(to, 'whole turn')}`,
  beat: (_, to) => `more than 0 and at most ${many(to, 'beat')}`,
  weight: () => 'from none to full: 0 to 100 %',
  rise: () => 'from down to up: 0 to 100 %',
}

function place(value: number): string {
  if (value === 0) return 'on the action’s count'
  return `${beatsInWords(Math.abs(value))} ${value < 0 ? 'before' : 'after'} the action’s count`
}

const beatsFrom = (beats: number): string =>
  beats === 0
    ? 'on the first count'
    : `${beatsInWords(Math.abs(beats))} ${beats < 0 ? 'before' : 'after'} the first count`

const sentences: { readonly [Code in ProblemCode]: (values: ProblemValues[Code]) => Advice } = {
  'not-yaml': ({ detail }) =>
    yamlWords[detail] ?? {
      rule: `The text cannot be read from here on (${detail}).`,
      mend: 'Compare this line with one of the examples: a key, a colon, a space and the value.',
    },
  'too-large': ({ bytes, limit }) => ({
    rule: `A figure’s file has at most ${Math.floor(limit / 1024)} KB; this one has ${Math.ceil(bytes / 1024)} KB.`,
    mend: 'Split the figure into several files.',
  }),
  'not-text': () => ({
    rule: 'This is no text that can be read: a picture, another program’s document, or another encoding.',
    mend: 'Save the description as plain text in UTF-8.',
  }),
  'not-a-mapping': ({ what }) => ({
    rule: `A figure’s file holds keys with values; this one holds ${kind(what)}.`,
    mend: 'Begin with the line “overfoot: 2”, then title, dance, role, first foot, timing and actions.',
  }),
  'version-missing': () => ({
    rule: 'A figure’s file says which version of the description it is written in.',
    mend: 'Add the line “overfoot: 2”.',
  }),
  'version-unknown': ({ value, known }) => ({
    rule: `Version ${quoted(value)} of the description is not known here; version ${known} is the newest that is. The file is left as it is.`,
    mend: `Open the file with a newer Overfoot, or write “overfoot: ${known}” if it was a slip.`,
  }),
  'key-missing': ({ key }) => ({ rule: `The key ${quoted(key)} is missing.`, mend: `Add a line “${key}: …”.` }),
  'key-unknown': ({ key, nearest, hasValue }) => ({
    rule: `The key ${quoted(key)} is not known here: what it says is not used.`,
    mend: instead(
      nearest,
      nearest !== ''
        ? ''
        : hasValue
          ? 'Take the line out, or put it behind a #.'
          : 'It has no value. Inside braces a comma ends a value: if this belongs to the text before it, put that text in quotation marks.',
    ).trim(),
  }),
  'key-newer': ({ key, version, since }) => ({
    rule: `Version ${version} of the description has no key ${quoted(key)}: what it says is not used.`,
    mend: `Write “overfoot: ${since}” if it is meant as version ${since} has it.`,
  }),
  'value-unknown': ({ key, value, nearest, allowed }) => ({
    rule: `${quoted(value)} is not known as ${quoted(key)}.`,
    mend: instead(nearest, `It can be: ${allowed}.`),
  }),
  'value-wrong-kind': ({ key, value, wanted }) => ({
    rule: `${key === '' ? 'The file' : quoted(key)} wants ${kind(wanted)}, and here is ${kind(value)}.`,
    mend:
      value === 'nothing'
        ? 'Write the value after the colon, or take the line out.'
        : wanted === 'list'
          ? 'Write each entry on a line of its own, beginning with “- ”.'
          : 'Write the value on the key’s own line.',
  }),
  'text-too-long': ({ key, length, limit }) => ({
    rule: `${quoted(key)} has at most ${limit} characters; this one has ${length}.`,
    mend: 'Shorten it.',
  }),
  'number-out-of-range': ({ key, value, from, to, unit }) => ({
    rule: `${quoted(key)} is ${UNITS[unit](from, to)}; here is ${quoted(value)}.`,
    mend: 'Check the number and its unit.',
  }),
  'timing-sign-unknown': ({ sign, position }) => ({
    rule: `${quoted(sign)}, at place ${position} of the timing, is no sign of a timing.`,
    mend: 'Signs are S, Q, &, a, the counts, (2) for a beat held, and 4-1 for one step over two counts.',
  }),
  'timing-count-out-of-order': ({ sign, expected }) => ({
    rule: `Counts follow each other through the bar: ${quoted(sign)} stands where ${quoted(expected)} comes.`,
    mend: `A step that lasts over count ${expected} is written with it: 1 (2) 3, or 4-1. A count on which nothing is stepped is an action “hold”.`,
  }),
  'timing-split-first': ({ sign }) => ({
    rule: `${quoted(sign)} takes its time from the step before it or adds to it, and there is none before it.`,
    mend: 'Begin with the step that comes before.',
  }),
  'timing-split-too-long': ({ sign, left }) => ({
    rule: `${quoted(sign)} takes its time from the step before it, which has only ${beatsInWords(left)}: nothing would be left of it.`,
    mend: 'Take the sign out, or write the step before it longer; if the time is shared otherwise, add “values”.',
  }),
  'timing-sign-not-of-dance': ({ sign, dance }) => ({
    rule: `${dance} is counted in numbers, not in slows and quicks: ${quoted(sign)} says no length there.`,
    mend: 'Write the counts: 1 2 3.',
  }),
  'timing-length': ({ timing, signs, actions }) => ({
    rule: `Each action has one sign: ${quoted(timing)} has ${many(signs, 'sign')}, and there ${actions === 1 ? 'is' : 'are'} ${many(actions, 'action')}.`,
    mend: 'Add what is missing. A tap, a brush and a hold have signs of their own; 4-1 and 1 (2) are one sign each.',
  }),
  'timing-hold-not-hold': ({ timing, direction }) => ({
    rule: `${quoted(timing)} says (hold), and the action on that count is ${quoted(direction)}.`,
    mend: 'Make the action a “hold”, or take (hold) out of the timing.',
  }),
  'values-length': ({ timing, signs, given }) => ({
    rule: `Each sign has one beat value: ${quoted(timing)} has ${many(signs, 'sign')}, and there ${given === 1 ? 'is' : 'are'} ${many(given, 'value')}.`,
    mend: 'Write one value for each sign, with spaces between them.',
  }),
  'list-too-long': ({ key, count, limit }) => ({
    rule: `${quoted(key)} has at most ${limit} entries; this one has ${count}.`,
    mend: 'Keep those that are needed.',
  }),
  'too-many-actions': ({ count, limit }) => ({
    rule: `A figure has at most ${limit} actions; this one has ${count}.`,
    mend: 'Split it into several figures.',
  }),
  'no-actions': () => ({
    rule: 'A figure has at least one action.',
    mend: 'Write each action on a line of its own under “actions:”, beginning with “- ”.',
  }),
  'moment-not-a-count': ({ key, value, last }) => ({
    rule: `${quoted(key)} is a moment, said as a count; ${quoted(value)} is none.`,
    mend: `Write a count from 1 to ${last}, alone or followed by & (half a beat later) or a (the last quarter): 2, 2 &, 2 a.`,
  }),
  'moments-out-of-order': ({ earlier, earlierAt, later, laterAt }) => ({
    rule: `${quoted(later)} cannot come before ${quoted(earlier)}: here it is ${place(laterAt)}, and ${quoted(earlier)} ${place(earlierAt)}.`,
    mend: 'The order is leaves, touches, split, full. A count is taken as the one nearest to the action’s own.',
  }),
  'weight-on-hold': ({ direction, value }) => ({
    rule: `A ${direction} ${direction === 'tap' || direction === 'point' ? 'carries a part of the weight at most' : 'carries no weight'}; here is ${value}.`,
    mend:
      direction === 'brush'
        ? 'Make the action a “close”, or take “weight” out.'
        : direction === 'hold'
          ? 'Make the action “in place”, or take “weight” out.'
          : 'Make the action a step, or say a smaller part: weight: 30 %.',
  }),
  'turn-not-a-turn': ({ key, value }) => ({
    rule: `${quoted(value)} is no turn, and ${quoted(key)} wants one.`,
    mend: 'Write a part of a whole turn and a side: 1/4 right, 3/8 left; or none. A pivot, a twist and a heel turn are keys of their own.',
  }),
  'foot-turns-many': ({ first, second }) => ({
    rule: `An action has one turn on the foot; here are ${quoted(first)} and ${quoted(second)}.`,
    mend: 'Keep one of them; what the moving foot turns between the steps is “turn”.',
  }),
  'foot-turn-impossible': ({ key, direction, weight }) => ({
    rule:
      key === 'heel turn'
        ? `A heel turn is made while the other foot closes or is pulled to the side; here the action is ${quoted(direction)}.`
        : `A ${key} is made on a foot that has all of the weight; here the step takes ${Math.round(weight * 100)} % of it.`,
    mend:
      key === 'heel turn'
        ? 'Make the action a “close”, or the turn a “turn” or a “pivot”.'
        : 'Make it a “twist”, which both feet make on their spots, or leave “weight” out.',
  }),
  'placed-impossible': ({ placed, direction }) => ({
    rule: `Only a step forward or back can be placed ${quoted(placed)}; here the direction is ${quoted(direction)}.`,
    mend: 'Take “placed” out, or write the direction as forward or back.',
  }),
  'free-foot-impossible': ({ direction }) => ({
    rule: `${quoted(direction)} does not say where a foot stands before anything has been danced.`,
    mend: 'Write a place: side, back, diagonally forward; or take the line out if the feet are closed.',
  }),
  'alignment-disagrees': ({ key, value, expected, nearest }) => ({
    rule:
      expected === ''
        ? `From the start, the turns lead to none of the room’s eight directions here (the nearest: ${nearest}); ${quoted(key)} says ${quoted(value)}.`
        : `From the start, the turns lead to ${quoted(expected)} here; ${quoted(key)} says ${quoted(value)}.`,
    mend: 'Check “starts”, the turns up to here and this line; the turns are what is shown.',
  }),
  'moments-clash': ({ timing, before, earlier, earlierAt, later, laterAt }) => ({
    rule: `In ${quoted(timing)}, ${quoted(later)} comes before ${quoted(earlier)} of action ${before}: ${beatsFrom(laterAt)} and ${beatsFrom(earlierAt)}.`,
    mend: 'One action is full before the next one leaves: move one of the two.',
  }),
  'track-out-of-order': ({ key, at }) => ({
    rule: `The entries of ${quoted(key)} follow each other in time; ${quoted(at)} does not come after the one before it.`,
    mend: 'Put the entries in order, or check the bar.',
  }),
  'track-outside': ({ key, at }) => ({
    rule: `${quoted(at)} lies more than a bar outside the figure.`,
    mend: `Check the bar: the first action’s is bar 1. ${quoted(key)} can begin a bar before it and end a bar after the figure.`,
  }),
  'written-not-of-dance': ({ value, dance, allowed }) => ({
    rule: `${dance} is not written in ${quoted(value)}.`,
    mend: `It can be: ${allowed}. Leave the line out if the timing counts the beats as they are danced.`,
  }),
  'timing-range-wrong': ({ sign }) => ({
    rule: `${quoted(sign)} is no run of counts that go on through the bar.`,
    mend: 'Write the first and the last count, the smaller one first: 1–4.',
  }),
  'timing-repeat-wrong': ({ sign }) => ({
    rule: `${quoted(sign)} says how often all before it is danced: 2 to 8 times, and something must stand before it.`,
    mend: 'Write the signs, then ×2.',
  }),
}

export type ProblemWords = Advice & {
  /** For the command line: `file:line:column code`, then both sentences. */
  readonly line: string
}

/** What a problem is called in the words of the trade: the rule it breaks, how to mend it, and both as one line. */
export function problemSentence(problem: Problem): ProblemWords {
  const { code, values, where } = problem
  const advice = sentences[code] as (facts: Problem['values']) => Advice
  const { rule, mend } = advice(values)
  const action = where.action === undefined ? '' : `action ${where.action}: `
  const line = `${plainText(where.file)}:${where.line}:${where.column} ${code} ${action}${rule} ${mend}`
  return { rule, mend, line }
}
