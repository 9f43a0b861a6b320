import * as v from 'valibot'
import type { Convention, DanceId } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { type Fault, fault } from '../problem.ts'
import type { Foot, Role } from './figure.ts'
import { nearestWord } from './nearestWord.ts'
import { readAlignment } from './readAlignment.ts'
import type { Reading } from './reading.ts'
import { read, refuse } from './reading.ts'
import { readSize } from './readSize.ts'
import { readSource } from './readSource.ts'
import { readTurn } from './readTurn.ts'
import { readValues } from './readValues.ts'
import { readWeight } from './readWeight.ts'
import { shownText } from './shownText.ts'
import { usualWeights } from './usualWeights.ts'

/** The version of the description that is written here. */
const VERSION = 1
const MOST_ACTIONS = 500
/** In characters. */
const LONGEST_TITLE = 120
const LONGEST_ABOUT = 2000

const roles: Readonly<Record<Role, true>> = { leader: true, follower: true }
const feet: Readonly<Record<Foot, true>> = { left: true, right: true }
const conventions: Readonly<Record<Convention, true>> = {
  'split on the count': true,
  'full on the count': true,
  struck: true,
}

const keysOf = <Key extends string>(record: Readonly<Record<Key, unknown>>) => Object.keys(record) as Key[]

/** A fault as the library carries it: in the place of a sentence. */
const carried = (found: Fault): string => JSON.stringify(found)

/** What stands in an issue's message. Every schema below gives one. */
export const faultOf = (issue: { readonly message: string }): Fault => JSON.parse(issue.message) as Fault

function kindOf(input: unknown): string {
  if (typeof input === 'string') return input.trim() === '' ? 'nothing' : shownText(input)
  if (Array.isArray(input)) return input.length === 0 ? 'nothing' : 'list'
  return input === null || input === undefined ? 'nothing' : 'mapping'
}

const wrongKind = (key: string, wanted: string) => (issue: { readonly input: unknown }) =>
  carried(fault('value-wrong-kind', { key, value: kindOf(issue.input), wanted }))

const text = (key: string) => v.string(wrongKind(key, 'text'))

const bounded = (key: string, limit: number) =>
  v.pipe(
    text(key),
    v.check(
      (value) => [...value].length <= limit,
      (issue) => carried(fault('text-too-long', { key, length: [...issue.input].length, limit })),
    ),
  )

/** A text with a meaning of its own. */
const spelled = <Value>(key: string, reader: (value: string) => Reading<Value>) =>
  v.pipe(
    text(key),
    v.rawTransform<string, Value>(({ dataset, addIssue, NEVER }) => {
      const reading = reader(dataset.value)
      if (reading.ok) return reading.value
      addIssue({ message: carried(reading.fault) })
      return NEVER
    }),
  )

/** One of a few words. */
const word = <Word extends string>(key: string, words: readonly Word[]) =>
  v.picklist(words, (issue) => {
    if (typeof issue.input !== 'string' || issue.input.trim() === '') return wrongKind(key, 'text')(issue)
    const value = shownText(issue.input)
    const nearest = nearestWord(issue.input, words)
    return carried(fault('value-unknown', { key, value, nearest, allowed: words.join(', ') }))
  })

/** A mapping's message: the key it lacks, or that it is none. */
const mapping =
  (key: string, wanted: string) => (issue: { readonly input: unknown; readonly expected: string | null }) => {
    const [, missing] = /^"(.+)"$/.exec(issue.expected ?? '') ?? []
    if (missing === undefined) return wrongKind(key, wanted)(issue)
    return carried(missing === 'overfoot' ? fault('version-missing', {}) : fault('key-missing', { key: missing }))
  }

const isMapping = (input: unknown): boolean => typeof input === 'object' && input !== null && !Array.isArray(input)

/** Says of any input that it is of the wrong kind. */
const never = (key: string, wanted: string) => v.never(wrongKind(key, wanted))

const readVersion = (value: string): Reading<number> =>
  value.trim() === String(VERSION)
    ? read(VERSION)
    : refuse(fault('version-unknown', { value: shownText(value), known: VERSION }))

const source = (key: string) => spelled(key, (value) => readSource(value, key))

const timingMapping = v.object(
  { say: text('say'), values: v.optional(spelled('values', readValues)), source: v.optional(source('source')) },
  mapping('timing', 'text or mapping'),
)

type SaidTiming = v.InferOutput<typeof timingMapping>

const bareTiming = v.pipe(
  text('timing'),
  v.transform((say): SaidTiming => ({ say })),
)

const timing = v.lazy((input) =>
  typeof input === 'string' ? bareTiming : isMapping(input) ? timingMapping : never('timing', 'text or mapping'),
)

const timings = v.lazy((input) =>
  Array.isArray(input)
    ? v.pipe(v.array(timing), v.minLength(1, wrongKind('timing', 'text, mapping or list')))
    : v.pipe(
        timing,
        v.transform((one) => [one]),
      ),
)

const direction = word('direction', keysOf(usualWeights))
const moment = (key: string) => v.optional(text(key))

const actionMapping = v.object(
  {
    direction,
    size: v.optional(spelled('size', readSize)),
    turn: v.optional(spelled('turn', readTurn)),
    weight: v.optional(spelled('weight', readWeight)),
    leaves: moment('leaves'),
    touches: moment('touches'),
    split: moment('split'),
    full: moment('full'),
  },
  mapping('actions', 'text or mapping'),
)

export type WrittenAction = v.InferOutput<typeof actionMapping>

const bareAction = v.pipe(
  direction,
  v.transform((only): WrittenAction => ({ direction: only })),
)

const action = v.lazy((input) =>
  typeof input === 'string' ? bareAction : isMapping(input) ? actionMapping : never('actions', 'text or mapping'),
)

const actions = v.pipe(
  v.array(v.unknown(), wrongKind('actions', 'list')),
  v.minLength(1, carried(fault('no-actions', {}))),
  v.maxLength(MOST_ACTIONS, (issue) =>
    carried(fault('too-many-actions', { count: issue.input.length, limit: MOST_ACTIONS })),
  ),
  v.array(action),
)

/** The shape of a description. Its output is what the words mean, action by action; what depends on the dance comes after. */
export const figureSchema = v.object(
  {
    overfoot: spelled('overfoot', readVersion),
    title: v.pipe(
      bounded('title', LONGEST_TITLE),
      v.check((value) => value.trim() !== '', wrongKind('title', 'text')),
    ),
    dance: word<DanceId>('dance', keysOf(dances)),
    role: word('role', keysOf(roles)),
    'first foot': word('first foot', keysOf(feet)),
    starts: v.optional(spelled('starts', readAlignment)),
    convention: v.optional(word('convention', keysOf(conventions))),
    timing: timings,
    'timing source': v.optional(source('timing source')),
    about: v.optional(bounded('about', LONGEST_ABOUT)),
    actions,
  },
  mapping('', 'mapping'),
)

export type WrittenFigure = v.InferOutput<typeof figureSchema>

/** The keys that the description knows, mapping by mapping. */
export const knownKeys = {
  figure: keysOf(figureSchema.entries),
  timing: keysOf(timingMapping.entries),
  action: keysOf(actionMapping.entries),
} as const
