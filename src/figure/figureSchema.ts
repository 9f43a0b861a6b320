import * as v from 'valibot'
import type { Convention, DanceId } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { fault } from '../problem.ts'
import { carried, mapping, wrongKind } from './carried.ts'
import type { Foot, Placed, Position, Role, TurnKind } from './figure.ts'
import { CURRENT_VERSION } from './migrations.ts'
import { alignmentWords, readAlignment } from './readAlignment.ts'
import { FOOTWORK_EXAMPLES, FOOTWORK_PATTERN, readFootwork } from './readFootwork.ts'
import type { Reading } from './reading.ts'
import { read, refuse } from './reading.ts'
import { AT_PATTERN, COUNT_PATTERN } from './readMoments.ts'
import { RISE_PATTERN, readRise } from './readRise.ts'
import { readSize, SIZE_PATTERN } from './readSize.ts'
import { readSource, SOURCE_PATTERN } from './readSource.ts'
import { readSway, SWAY_PATTERN } from './readSway.ts'
import { readTurn, TURN_PATTERN } from './readTurn.ts'
import { readValues, VALUES_PATTERN } from './readValues.ts'
import { readWeight, WEIGHT_PATTERN } from './readWeight.ts'
import { shownText } from './shownText.ts'
import { bounded, spelled, told, word } from './spelled.ts'
import { usualWeights } from './usualWeights.ts'

const MOST_ACTIONS = 500
/** In characters. */
const LONGEST_TITLE = 120
const LONGEST_ABOUT = 2000
const LONGEST_NOTE = 500
const MOST_TIMINGS = 20
const MOST_CHECKPOINTS = 500

const roles: Readonly<Record<Role, true>> = { leader: true, follower: true }
const feet: Readonly<Record<Foot, true>> = { left: true, right: true }
const conventions: Readonly<Record<Convention, true>> = {
  'split on the count': true,
  'full on the count': true,
  struck: true,
}
const placings: Readonly<Record<Placed, true>> = { 'in CBMP': true, across: true }
const positions: Readonly<Record<Position, true>> = {
  closed: true,
  promenade: true,
  'counter promenade': true,
  fallaway: true,
  'outside partner': true,
}
/** In the words of the charts: the side of the body that leads. */
const leadingSides: Readonly<Record<'left side' | 'right side', Foot>> = { 'left side': 'left', 'right side': 'right' }
const turnKinds: Readonly<Record<TurnKind, true>> = { pivot: true, twist: true, 'heel turn': true }

const keysOf = <Key extends string>(record: Readonly<Record<Key, unknown>>) => Object.keys(record) as Key[]

const isMapping = (input: unknown): boolean => typeof input === 'object' && input !== null && !Array.isArray(input)

/** Says of any input that it is of the wrong kind. */
const never = (key: string, wanted: string) => v.never(wrongKind(key, wanted))

/** The version that a description says it is written in; 1 to the present one. */
export const readVersion = (value: string): Reading<number> => {
  const version = /^[1-9]\d?$/.test(value.trim()) ? Number(value) : 0
  return version >= 1 && version <= CURRENT_VERSION
    ? read(version)
    : refuse(fault('version-unknown', { value: shownText(value), known: CURRENT_VERSION }))
}

const alignment = (key: string, says: string) =>
  spelled(key, readAlignment, {
    says,
    pattern: `^\\s*(${alignmentWords.join('|')})\\s*$`,
    // For editors that offer them.
    examples: alignmentWords,
  })

const source = (key: string, says: string) =>
  spelled(key, readSource, { says, pattern: SOURCE_PATTERN, examples: ['common practice', 'published: title, page'] })

const SAID = 'The timing as the trade writes it, one sign for each action.'
const SAID_EXAMPLES = ['S Q Q', '1 2 & 3', '2 3 4-1', '1 (2) 3', '1–8', '2 3 4&1 ×2']

const timingMapping = v.object(
  {
    say: told('say', { says: SAID, examples: SAID_EXAMPLES }),
    values: v.optional(
      spelled('values', readValues, {
        says: 'The beat value of each sign, where the signs do not tell.',
        pattern: VALUES_PATTERN,
        examples: ['3/4 1/2 3/4'],
      }),
    ),
    source: v.optional(source('source', 'Where this timing comes from.')),
  },
  mapping('timing', 'text or mapping'),
)

type SaidTiming = v.InferOutput<typeof timingMapping>

const bareTiming = v.pipe(
  told('timing', { says: SAID, examples: SAID_EXAMPLES }),
  v.transform((say): SaidTiming => ({ say })),
)

const timing = v.lazy((input) =>
  typeof input === 'string' ? bareTiming : isMapping(input) ? timingMapping : never('timing', 'text or mapping'),
)

const timings = v.lazy((input) =>
  Array.isArray(input)
    ? v.pipe(
        v.array(timing),
        v.minLength(1, wrongKind('timing', 'text, mapping or list')),
        v.maxLength(MOST_TIMINGS, (issue) =>
          carried(fault('list-too-long', { key: 'timing', count: issue.input.length, limit: MOST_TIMINGS })),
        ),
      )
    : v.pipe(
        timing,
        v.transform((one) => [one]),
      ),
)

const DIRECTION = 'Where the foot stands at the end, in relation to the other foot and the facing after the turn.'
const direction = word('direction', keysOf(usualWeights), DIRECTION)

const moment = (key: string, says: string) =>
  v.optional(told(key, { says, pattern: COUNT_PATTERN, examples: ['2', '2 &', '2 a'] }))

const turned = (key: string, says: string) =>
  spelled(key, readTurn, { says, pattern: TURN_PATTERN, examples: ['1/4 right', '3/8 left', 'none'] })

const actionMapping = v.object(
  {
    direction,
    size: v.optional(
      spelled('size', readSize, {
        says: 'How far from the standing foot; left out: the usual size.',
        pattern: SIZE_PATTERN,
        examples: ['40 cm', '0.4 m'],
      }),
    ),
    turn: v.optional(turned('turn', 'Made between the step before and this one, by the moving foot.')),
    pivot: v.optional(
      turned('pivot', 'Made on the new foot after it has the weight; the free foot goes round with it.'),
    ),
    twist: v.optional(turned('twist', 'Made by every foot on the floor on its own spot, after the step.')),
    'heel turn': v.optional(turned('heel turn', 'Made on the standing heel while the other foot closes.')),
    placed: v.optional(
      word('placed', keysOf(placings), 'On the line of the standing foot (in CBMP) or over it (across).'),
    ),
    position: v.optional(word('position', keysOf(positions), 'Where the partners are to each other on this step.')),
    leading: v.optional(word('leading', keysOf(leadingSides), 'The side of the body that goes with the step.')),
    alignment: v.optional(
      alignment('alignment', 'Where the feet point at the end of the step; checked against the turns.'),
    ),
    weight: v.optional(
      spelled('weight', readWeight, {
        says: 'The part of the weight that the foot takes.',
        pattern: WEIGHT_PATTERN,
        examples: ['full', 'half', 'none', '1/3', '30 %'],
      }),
    ),
    leaves: moment('leaves', 'The count on which the weight leaves the standing foot.'),
    touches: moment('touches', 'The count on which the foot comes to rest in its new place.'),
    split: moment('split', 'The count on which the weight is half way.'),
    full: moment('full', 'The count on which the weight is over the new foot.'),
    footwork: v.optional(
      spelled('footwork', readFootwork, {
        says: 'The part of the foot on the floor.',
        pattern: FOOTWORK_PATTERN,
        examples: FOOTWORK_EXAMPLES,
      }),
    ),
    note: v.optional(bounded('note', LONGEST_NOTE, 'A remark on this action, in plain words.')),
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
  v.description('What is danced, one entry for each sign of the timing: a direction, or a mapping.'),
  v.minLength(1, carried(fault('no-actions', {}))),
  v.maxLength(MOST_ACTIONS, (issue) =>
    carried(fault('too-many-actions', { count: issue.input.length, limit: MOST_ACTIONS })),
  ),
  v.array(action),
)

const track = <Value>(key: string, says: string, to: v.GenericSchema<unknown, Value>) =>
  v.optional(
    v.pipe(
      v.array(
        v.object(
          {
            at: told('at', {
              says: 'The count; with its bar where the first such count after the entry before is not meant.',
              pattern: AT_PATTERN,
              examples: ['1 &', 'bar 2, 3'],
            }),
            to,
          },
          mapping(key, 'mapping'),
        ),
        wrongKind(key, 'list'),
      ),
      v.maxLength(MOST_CHECKPOINTS, (issue) =>
        carried(fault('list-too-long', { key, count: issue.input.length, limit: MOST_CHECKPOINTS })),
      ),
      v.description(says),
    ),
  )

/** The shape of a description. Its output is what the words mean, action by action; what depends on the dance comes after. */
export const figureSchema = v.object(
  {
    overfoot: spelled('overfoot', readVersion, {
      says: 'The version of the description.',
      pattern: `^\\s*[1-${CURRENT_VERSION}]\\s*$`,
    }),
    title: v.pipe(
      bounded('title', LONGEST_TITLE, 'What the figure is called.'),
      v.metadata({ pattern: '\\S' }),
      v.check((value) => value.trim() !== '', wrongKind('title', 'text')),
    ),
    dance: word<DanceId>('dance', keysOf(dances), 'The dance; it says what the signs of a timing are worth.'),
    role: word('role', keysOf(roles), 'Whose steps these are.'),
    'first foot': word('first foot', keysOf(feet), 'The foot that acts first.'),
    starts: v.optional(
      alignment('starts', 'How the feet stand to the room at the start; left out: not tied to the room.'),
    ),
    ends: v.optional(alignment('ends', 'How the feet stand to the room at the end; checked against the turns.')),
    'free foot': v.optional(
      word('free foot', keysOf(usualWeights), 'Where the first foot stands at the start; left out: closed.'),
    ),
    convention: v.optional(
      word('convention', keysOf(conventions), 'Where in a step its beat lies; left out: as usual in the dance.'),
    ),
    'written in': v.optional(
      told('written in', {
        says: 'The time signature whose beats the timing counts, where it is not the one danced.',
        pattern: '^\\s*[0-9]/[0-9]\\s*$',
        examples: ['2/4'],
      }),
    ),
    timing: v.pipe(timings, v.description('When the actions are danced: one timing, or several for the same actions.')),
    'timing source': v.optional(source('timing source', 'Where the timings come from that do not say it themselves.')),
    'steps source': v.optional(source('steps source', 'Where the steps come from.')),
    about: v.optional(bounded('about', LONGEST_ABOUT, 'What to look for, in plain words.')),
    actions,
    'body turn': track('body turn', 'Turn of the body since the start.', turned('body turn', 'Turned so far.')),
    'rise and fall': track(
      'rise and fall',
      'How high the body is.',
      spelled('rise and fall', readRise, {
        says: 'The height.',
        pattern: RISE_PATTERN,
        examples: ['down', 'half up', 'up', '30 %'],
      }),
    ),
    sway: track(
      'sway',
      'Inclination of the body.',
      spelled('sway', readSway, {
        says: 'The side.',
        pattern: SWAY_PATTERN,
        examples: ['left', 'slightly right', 'none'],
      }),
    ),
  },
  mapping('', 'mapping'),
)

export type WrittenFigure = v.InferOutput<typeof figureSchema>

/** The keys that the description knows, mapping by mapping. */
export const knownKeys = {
  figure: keysOf(figureSchema.entries),
  timing: keysOf(timingMapping.entries),
  action: keysOf(actionMapping.entries),
  checkpoint: ['at', 'to'],
} as const

/** The foot of a leading side. */
export const leadingFoot = (side: keyof typeof leadingSides): Foot => leadingSides[side]

/** The ways to turn on a foot, as keys of an action. */
export const turnKindKeys: readonly TurnKind[] = keysOf(turnKinds)

/** What a timing and an action can be, apart: for those who cannot look at the input first (the published JSON Schema). */
export const shapes = {
  timing: [bareTiming, timingMapping],
  mostTimings: MOST_TIMINGS,
  action: [direction, actionMapping],
} as const
