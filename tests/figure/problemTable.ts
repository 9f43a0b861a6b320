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
  'version-unknown': [
    [but('overfoot: 1', 'overfoot: 2'), ['version-unknown', 1, 11]],
    // What a newer version means is not known: nothing else is said of it.
    [but('overfoot: 1', 'overfoot: 1.5', but('role: leader', 'part: both')), ['version-unknown', 1, 11]],
  ],
  'key-missing': [
    [but('role: leader\n', ''), ['key-missing', 1, 1]],
    [but('- direction: side', '- size: 40 cm'), ['key-missing', 9, 5, 2]],
    [but('timing: S Q Q', 'timing: { values: 2 1 1 }'), ['key-missing', 6, 9]],
  ],
  'key-unknown': [
    [but('role: leader', 'role: leader\n__proto__: {}'), ['key-unknown', 5, 1]],
    [but('side', 'side\n    constructor: x'), ['key-unknown', 10, 5, 2]],
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
    [but('S Q Q', '{ say: S Q Q, values: 2 1 1/7 }'), ['value-unknown', 6, 31]],
    [but('S Q Q', '[{ say: S Q Q, values: 2 1 x }]'), ['value-unknown', 6, 32]],
  ],
  'value-wrong-kind': [
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
    [but('side', 'side\n    size: 40 m'), ['number-out-of-range', 10, 11, 2]],
    [but('side', 'side\n    turn: 9/4 left'), ['number-out-of-range', 10, 11, 2]],
    [but('side', 'side\n    weight: 130 %'), ['number-out-of-range', 10, 13, 2]],
    [but('S Q Q', '{ say: S Q Q, values: 2 1 0 }'), ['number-out-of-range', 6, 31]],
    [but('S Q Q', '{ say: S Q Q, values: 2 1 17 }'), ['number-out-of-range', 6, 31]],
  ],
  'timing-sign-unknown': [
    [but('S Q Q', 'S quick Q'), ['timing-sign-unknown', 6, 11]],
    [but('S Q Q', '"S x Q y"'), ['timing-sign-unknown', 6, 12], ['timing-sign-unknown', 6, 16]],
    [but('S Q Q', '\n  - S Q Q\n  - say: S Q +'), ['timing-sign-unknown', 8, 14]],
    // Inside a folded text the sign has no column of its own: the text's beginning.
    [but('S Q Q', '>\n  S x Q'), ['timing-sign-unknown', 6, 9]],
  ],
  'timing-count-out-of-order': [[waltz('1 2 4'), ['timing-count-out-of-order', 6, 13]]],
  'timing-split-first': [[waltz('a 1 2'), ['timing-split-first', 6, 9]]],
  'timing-split-too-long': [[waltz('1 & &'), ['timing-split-too-long', 6, 13]]],
  'timing-sign-not-of-dance': [[waltz('S Q'), ['timing-sign-not-of-dance', 6, 9], ['timing-sign-not-of-dance', 6, 11]]],
  'timing-length': [
    [but('S Q Q', 'S Q Q S'), ['timing-length', 6, 9]],
    [but('  - close\n', ''), ['timing-length', 6, 9]],
    [but('S Q Q', '[S Q Q, Q Q]'), ['timing-length', 6, 17]],
  ],
  'timing-hold-not-hold': [[but('S Q Q', 'S Q (hold) Q'), ['timing-hold-not-hold', 6, 13]]],
  'values-length': [[but('S Q Q', '{ say: S Q Q, values: 2 1 }'), ['values-length', 6, 31]]],
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
}
