import type { ProblemCode } from '../../src/problem.ts'

/** What is wrong with a text, and where: line, column, and the number of the action if it is one's. */
export type Expected = readonly [ProblemCode, line: number, column: number, action?: number]

/** A text that is right but for what the case changes: ten lines, three actions on lines 8 to 10. */
export const RIGHT = `overfoot: 1
title: Three walks
dance: foxtrot
role: leader
first foot: right
timing: S Q Q
actions:
  - forward
  - direction: side
  - close
`

const HEAD = RIGHT.split('actions:')[0] ?? ''

/** `RIGHT` with `from` replaced; throws when it is not there, so that a case cannot test nothing. */
export function but(from: string, to: string, text = RIGHT): string {
  if (!text.includes(from)) throw new Error(`the text has no ${JSON.stringify(from)}`)
  return text.replace(from, () => to)
}

const waltz = (timing: string): string => but('timing: S Q Q', `timing: ${timing}`, but('foxtrot', 'waltz'))

/** `RIGHT` in the present version, tied to the room, its second action with these lines added (from line 11 on). */
const V2 = but('role: leader', 'role: leader\nstarts: facing line of dance', but('overfoot: 1', 'overfoot: 2'))
const second = (...lines: readonly string[]): string => but('side', ['side', ...lines].join('\n    '), V2)
const third = (direction: string, ...lines: readonly string[]): string =>
  but('- close', `- ${[`direction: ${direction}`, ...lines].join('\n    ')}`, V2)

/** Problems that let the figure load. */
export const WARNINGS: readonly ProblemCode[] = ['key-newer', 'alignment-disagrees']

/** Texts that have each problem. A code without a case does not compile. */
export const cases: { readonly [Code in ProblemCode]: readonly (readonly [text: string, ...Expected[]])[] } = {
  'not-yaml': [
    [but('Three walks', '"Three walks'), ['not-yaml', 11, 1]],
    [but('Three walks', 'Walks: three'), ['not-yaml', 2, 8]],
    [but('  - close', '\t- close'), ['not-yaml', 10, 1]],
    [but('- close', '- *close'), ['not-yaml', 10, 5]],
    [but('S Q Q', '!!binary S'), ['not-yaml', 6, 9]],
    [but('role: leader', 'role: leader\nrole: follower'), ['not-yaml', 5, 1]],
    [but('- close', '- [close]: now'), ['not-yaml', 10, 5]],
    [`${RIGHT}---\ntitle: another\n`, ['not-yaml', 11, 1]],
    ['- '.repeat(32_000), ['not-yaml', 1, 60]],
  ],
  'too-large': [[`${RIGHT}#${'é'.repeat(32_768)}`, ['too-large', 1, 1]]],
  'not-a-mapping': [
    ['', ['not-a-mapping', 1, 1]],
    ['# nothing yet\n', ['not-a-mapping', 1, 1]],
    ['\n- forward\n', ['not-a-mapping', 2, 1]],
    ['S Q Q', ['not-a-mapping', 1, 1]],
  ],
  'version-missing': [[but('overfoot: 1\n', ''), ['version-missing', 1, 1]]],
  'not-text': [
    [but('walks', 'wal\0ks'), ['not-text', 2, 17]],
    [but('walks', 'walks \uFFFD'), ['not-text', 2, 20]],
  ],
  'version-unknown': [
    [but('overfoot: 1', 'overfoot: 3'), ['version-unknown', 1, 11]],
    [but('overfoot: 1', 'overfoot: 0'), ['version-unknown', 1, 11]],
    // What a newer version means is not known: nothing else is said of it.
    [but('overfoot: 1', 'overfoot: 1.5', but('role: leader', 'part: both')), ['version-unknown', 1, 11]],
    [
      but('overfoot: 1', 'overfoot: 3', but('- close', '- *a', but('- forward', '- &a forward'))),
      ['version-unknown', 1, 11],
    ],
  ],
  'key-missing': [
    [but('role: leader\n', ''), ['key-missing', 1, 1]],
    [but('- direction: side', '- size: 40 cm'), ['key-missing', 9, 5, 2]],
    [but('timing: S Q Q', 'timing: { values: 2 1 1 }'), ['key-missing', 6, 9]],
  ],
  'key-unknown': [
    [but('role: leader', 'role: leader\n__proto__: {}'), ['key-unknown', 5, 1]],
    [but('side', 'side\n    constructor: x'), ['key-unknown', 10, 5, 2]],
    [but('S Q Q', '[{ say: S Q Q, prototype: x }]'), ['key-unknown', 6, 24]],
    [`${V2}sway:\n  - { at: 1, to: left, __proto__: { x: y } }\n`, ['key-unknown', 13, 24]],
  ],
  'key-newer': [
    [but('role: leader', 'role: leader\nends: facing wall'), ['key-newer', 5, 1]],
    [but('side', 'side\n    pivot: as you like'), ['key-newer', 10, 5, 2]],
  ],
  'value-unknown': [
    [but('foxtrot', 'foxtrott'), ['value-unknown', 3, 8]],
    [but('leader', 'Leader'), ['value-unknown', 4, 7]],
    [but('first foot: right', 'first foot: both'), ['value-unknown', 5, 13]],
    [but('role: leader', 'role: leader\nstarts: facing north'), ['value-unknown', 5, 9]],
    [but('role: leader', 'role: leader\nconvention: late'), ['value-unknown', 5, 13]],
    [but('role: leader', 'role: leader\ntiming source: hearsay'), ['value-unknown', 5, 16]],
    [but('- close', '- clsoe'), ['value-unknown', 10, 5, 3]],
    [but('side', 'side\n    size: 40'), ['value-unknown', 10, 11, 2]],
    [but('side', 'side\n    weight: 0.5'), ['value-unknown', 10, 13, 2]],
    [but('side', 'side\n    weight: 1'), ['value-unknown', 10, 13, 2]],
    [but('S Q Q', '{ say: S Q Q, values: 2 1 1/7 }'), ['value-unknown', 6, 35]],
    [but('S Q Q', '[{ say: S Q Q, values: 2 1 x }]'), ['value-unknown', 6, 36]],
    [
      but('S Q Q', '{ say: S Q Q, values: "x | 17, y" }'),
      ['value-unknown', 6, 32],
      ['number-out-of-range', 6, 36],
      ['value-unknown', 6, 40],
    ],
    [second('placed: in CMBP'), ['value-unknown', 11, 13, 2]],
    [second('position: promenad'), ['value-unknown', 11, 15, 2]],
    [second('leading: left'), ['value-unknown', 11, 14, 2]],
    [second('alignment: facing the bar'), ['value-unknown', 11, 16, 2]],
    [second('footwork: heal of HX'), ['value-unknown', 11, 15, 2], ['value-unknown', 11, 23, 2]],
    [`${V2}rise and fall:\n  - { at: 1, to: high }\n`, ['value-unknown', 13, 18]],
    [`${V2}sway:\n  - { at: 1, to: lft }\n`, ['value-unknown', 13, 18]],
  ],
  'value-wrong-kind': [
    [`${V2}sway: left\n`, ['value-wrong-kind', 12, 7]],
    [`${V2}sway:\n  - left\n`, ['value-wrong-kind', 13, 5]],
    [but('Three walks', '[Three, walks]'), ['value-wrong-kind', 2, 8]],
    [but('title: Three walks', 'title:'), ['value-wrong-kind', 2, 1]],
    [but('Three walks', '" "'), ['value-wrong-kind', 2, 8]],
    [but('foxtrot', '[foxtrot]'), ['value-wrong-kind', 3, 8]],
    [but('- close', '-'), ['value-wrong-kind', 10, 4, 3]],
    [but('- close', '- [close]'), ['value-wrong-kind', 10, 5, 3]],
    [but('side', 'side\n    size: {cm: 40}'), ['value-wrong-kind', 10, 11, 2]],
    [but('S Q Q', '[]'), ['value-wrong-kind', 6, 9]],
    [`${HEAD}actions: forward\n`, ['value-wrong-kind', 7, 10]],
  ],
  'text-too-long': [
    [but('Three walks', 'é'.repeat(121)), ['text-too-long', 2, 8]],
    [but('role: leader', `role: leader\nabout: ${'x'.repeat(2001)}`), ['text-too-long', 5, 8]],
    [but('role: leader', `role: leader\ntiming source: published, ${'x'.repeat(300)}`), ['text-too-long', 5, 16]],
  ],
  'number-out-of-range': [
    [`${V2}rise and fall:\n  - { at: 1, to: 130 % }\n`, ['number-out-of-range', 13, 18]],
    [second('pivot: 3 right'), ['number-out-of-range', 11, 12, 2]],
    [but('side', 'side\n    size: 40 m'), ['number-out-of-range', 10, 11, 2]],
    [but('side', 'side\n    turn: 9/4 left'), ['number-out-of-range', 10, 11, 2]],
    [but('side', 'side\n    weight: 130 %'), ['number-out-of-range', 10, 13, 2]],
    [but('S Q Q', '{ say: S Q Q, values: 2 1 0 }'), ['number-out-of-range', 6, 35]],
    [but('S Q Q', '{ say: S Q Q, values: 2 1 17 }'), ['number-out-of-range', 6, 35]],
  ],
  'timing-sign-unknown': [
    [but('S Q Q', 'S quick Q'), ['timing-sign-unknown', 6, 11]],
    [but('S Q Q', '"S x Q y"'), ['timing-sign-unknown', 6, 12], ['timing-sign-unknown', 6, 16]],
    [but('S Q Q', '\n  - S Q Q\n  - say: S Q +'), ['timing-sign-unknown', 8, 14]],
    // Inside a folded text the sign has no column of its own: the text's beginning.
    [but('S Q Q', '>\n  S x Q'), ['timing-sign-unknown', 6, 9]],
  ],
  'timing-count-out-of-order': [[waltz('1 2 4'), ['timing-count-out-of-order', 6, 13]]],
  'timing-split-first': [[waltz('(1) 2 3'), ['timing-split-first', 6, 9]]],
  'timing-range-wrong': [[waltz('"1–5"'), ['timing-range-wrong', 6, 11]]],
  'timing-repeat-wrong': [[waltz('"×2 1 2 3"'), ['timing-repeat-wrong', 6, 10]]],
  'written-not-of-dance': [[but('S Q Q', 'S Q Q\nwritten in: 2/4', V2), ['written-not-of-dance', 8, 13]]],
  'timing-split-too-long': [[waltz('1 & &'), ['timing-split-too-long', 6, 13]]],
  'timing-sign-not-of-dance': [[waltz('S Q'), ['timing-sign-not-of-dance', 6, 9], ['timing-sign-not-of-dance', 6, 11]]],
  'timing-length': [
    [but('S Q Q', 'S Q Q S'), ['timing-length', 6, 9]],
    [but('  - close\n', ''), ['timing-length', 6, 9]],
    [but('S Q Q', '[S Q Q, Q Q]'), ['timing-length', 6, 17]],
  ],
  'timing-hold-not-hold': [[but('S Q Q', 'S Q (hold) Q'), ['timing-hold-not-hold', 6, 13]]],
  'values-length': [[but('S Q Q', '{ say: S Q Q, values: 2 1 }'), ['values-length', 6, 31]]],
  'list-too-long': [
    [but('S Q Q', `[${Array.from({ length: 21 }, () => 'S Q Q').join(', ')}]`), ['list-too-long', 6, 9]],
  ],
  'too-many-actions': [[`${HEAD}actions:\n${'  - forward\n'.repeat(501)}`, ['too-many-actions', 8, 3]]],
  'no-actions': [[`${HEAD}actions: []\n`, ['no-actions', 7, 10]]],
  'moment-not-a-count': [
    [but('side', 'side\n    full: later'), ['moment-not-a-count', 10, 11, 2]],
    [but('side', 'side\n    full: 5'), ['moment-not-a-count', 10, 11, 2]],
    [but('side', 'side\n    full: 0 &'), ['moment-not-a-count', 10, 11, 2]],
    // A timing that is wrong leaves the moments' own faults to be seen.
    [but('S Q Q', 'S Q', but('side', 'side\n    full: 5')), ['timing-length', 6, 9], ['moment-not-a-count', 10, 11, 2]],
  ],
  'moments-out-of-order': [
    // The quick of S Q Q is called on 3.
    [but('side', 'side\n    touches: 3 &\n    split: 3'), ['moments-out-of-order', 11, 12, 2]],
    [but('side', 'side\n    full: 3\n    leaves: 3 a'), ['moments-out-of-order', 10, 11, 2]],
  ],
  'weight-on-hold': [
    [but('side', 'hold\n    weight: 10 %'), ['weight-on-hold', 10, 13, 2]],
    [but('side', 'brush\n    weight: half'), ['weight-on-hold', 10, 13, 2]],
    [but('side', 'tap\n    weight: full'), ['weight-on-hold', 10, 13, 2]],
  ],
  'turn-not-a-turn': [
    [but('side', 'side\n    turn: 1/4'), ['turn-not-a-turn', 10, 11, 2]],
    [but('side', 'side\n    turn: 1/0 left'), ['turn-not-a-turn', 10, 11, 2]],
    [but('side', 'side\n    turn: 90'), ['turn-not-a-turn', 10, 11, 2]],
  ],
  'foot-turns-many': [[second('pivot: 1/4 right', 'twist: 1/4 right'), ['foot-turns-many', 12, 12, 2]]],
  'foot-turn-impossible': [
    [third('forward', 'heel turn: 1/4 left'), ['foot-turn-impossible', 12, 16, 3]],
    [third('back', 'weight: half', 'pivot: 1/4 left'), ['foot-turn-impossible', 13, 12, 3]],
  ],
  'placed-impossible': [[second('placed: in CBMP'), ['placed-impossible', 11, 13, 2]]],
  'free-foot-impossible': [[but('timing:', 'free foot: in place\ntiming:', V2), ['free-foot-impossible', 7, 12]]],
  'alignment-disagrees': [
    [second('turn: 1/4 right', 'alignment: backing wall'), ['alignment-disagrees', 12, 16, 2]],
    [second('turn: 1/5 right', 'alignment: facing wall'), ['alignment-disagrees', 12, 16, 2]],
    [but('timing:', 'ends: facing centre\ntiming:', V2), ['alignment-disagrees', 7, 7]],
    // A pivot comes after the foot is placed.
    [second('pivot: 1/4 right', 'alignment: facing wall'), ['alignment-disagrees', 12, 16, 2]],
  ],
  'moments-clash': [
    // Called on 3 and 4.
    [but('- close', '- direction: close\n    leaves: 3', second('full: 3 &')), ['moments-clash', 13, 13, 3]],
  ],
  'track-out-of-order': [
    // An entry without a sound value is placed all the same.
    [
      `${V2}sway:\n  - { at: "bar 1, 1", to: lft }\n  - { at: "bar 0, 1", to: left }\n`,
      ['value-unknown', 13, 27],
      ['track-out-of-order', 14, 11],
    ],
    [
      `${V2}sway:\n  - { at: "bar 2, 1", to: left }\n  - { at: "bar 1, 4", to: none }\n`,
      ['track-out-of-order', 14, 11],
    ],
  ],
  'track-outside': [[`${V2}sway:\n  - { at: "bar 9, 1", to: left }\n`, ['track-outside', 13, 11]]],
}
