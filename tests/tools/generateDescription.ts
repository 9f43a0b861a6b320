import fc from 'fast-check'
import type { DanceId, Source } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import type {
  Action,
  Alignment,
  Checkpoint,
  Direction,
  Figure,
  RoomDirection,
  Timing,
} from '../../src/figure/figure.ts'
import { usualWeights } from '../../src/figure/usualWeights.ts'
import { type BeatValue, beatValue, metres, radians, share } from '../../src/units.ts'

const BEAT: number = beatValue(1)
const DIRECTIONS = Object.keys(usualWeights) as readonly Direction[]
const TAKES_TURNS: readonly Direction[] = ['forward', 'back', 'side', 'diagonally back', 'slightly side']
const AHEAD: readonly Direction[] = ['forward', 'back', 'diagonally forward', 'slightly back']

/** What a text may hold: words, signs that YAML has a use for, other scripts, a mark that turns the direction of writing. */
const words = fc
  .array(
    fc.constantFrom(
      'walk',
      'Ball',
      'é',
      '的',
      ':',
      '#',
      '- x',
      '"',
      "'",
      '\\',
      '&',
      '*',
      '{',
      '%',
      'no',
      '1',
      '\u202e',
    ),
    {
      minLength: 1,
      maxLength: 6,
    },
  )
  .map((parts) => parts.join(' ').trim())
  .filter((text) => text !== '')

const source: fc.Arbitrary<Source> = fc.record({
  provenance: fc.constantFrom('published', 'common practice', 'from memory', 'own judgement'),
  text: fc.oneof(fc.constant(''), fc.constantFrom('a list, page 3', 'a book: chapter 2', 'cards (2010)')),
})

const room: fc.Arbitrary<RoomDirection> = fc.constantFrom('line of dance', 'wall', 'centre', 'diagonally to wall')
const alignment: fc.Arbitrary<Alignment> = fc.record({
  way: fc.constantFrom('facing', 'backing', 'pointing'),
  to: room,
})
const eighth = fc.integer({ min: -8, max: 8 }).filter((n) => n !== 0)
const turn = (n: number) => radians((n < 0 ? -1 : 1) * (Math.abs(n) / 8) * 2 * Math.PI)

type Signs = Pick<Timing, 'text' | 'signs' | 'values' | 'firstCount'>

/** Slows and quicks, or counts from the dance's first on, with an & (and in some dances an a) here and there. */
function signsOf(id: DanceId, kinds: readonly number[]): Signs {
  const dance = dances[id]
  const signs: string[] = []
  const values: number[] = []
  let count = dance.firstCount
  for (const kind of kinds) {
    const before = values.at(-1)
    if (kind === 3 && before !== undefined && before > BEAT / 2 && signs.at(-1) !== '&') {
      values[values.length - 1] = before - BEAT / 2
      signs.push('&')
      values.push(BEAT / 2)
    } else if (dance.signs.S !== null && dance.signs.Q !== null) {
      signs.push(kind === 0 ? 'S' : 'Q')
      values.push(kind === 0 ? dance.signs.S : dance.signs.Q)
    } else {
      signs.push(String(count))
      values.push(BEAT)
      count = (count % dance.beatsPerBar) + 1
    }
  }
  return { text: signs.join(' '), signs, values: values as BeatValue[], firstCount: dance.firstCount }
}

const plainAction = (direction: Direction): Action => ({
  direction,
  size: null,
  turn: radians(0),
  footTurn: null,
  placed: null,
  position: null,
  leading: null,
  alignment: null,
  footwork: '',
  note: '',
  weight: share(usualWeights[direction]),
  moments: {},
})

const sometimes = <Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | null> =>
  fc.oneof({ weight: 4, arbitrary: fc.constant(null) }, value)

const action: fc.Arbitrary<Action> = fc.constantFrom(...DIRECTIONS).chain((direction) => {
  if (direction === 'hold' || direction === 'brush') return fc.constant(plainAction(direction))
  const bare = fc.constant(plainAction(direction))
  const step = fc.record({
    size: sometimes(fc.integer({ min: 1, max: 200 }).map((cm) => metres(cm / 100))),
    turn: sometimes(eighth.map(turn)).map((by) => by ?? radians(0)),
    footTurn: TAKES_TURNS.includes(direction)
      ? sometimes(fc.record({ kind: fc.constant('twist' as const), by: eighth.map(turn) }))
      : fc.constant(null),
    placed: AHEAD.includes(direction)
      ? sometimes(fc.constantFrom('in CBMP' as const, 'across' as const))
      : fc.constant(null),
    position: sometimes(fc.constantFrom('closed', 'promenade', 'outside partner')),
    leading: sometimes(fc.constantFrom('left', 'right')),
    footwork: fc.constantFrom('', '', 'HT', 'TH(T)', 'inside edge of T', 'whole foot'),
    note: fc.oneof({ weight: 4, arbitrary: fc.constant('') }, words),
    weight:
      usualWeights[direction] === 1
        ? fc.constantFrom(share(1), share(1), share(0.5), share(0.3), share(1 / 3))
        : fc.constant(share(usualWeights[direction])),
  })
  return fc.oneof(
    bare,
    step.map((more): Action => ({ ...plainAction(direction), ...more }) as Action),
  )
})

const points = (values: fc.Arbitrary<number>): fc.Arbitrary<readonly Checkpoint[]> =>
  fc.oneof(
    { weight: 4, arbitrary: fc.constant([]) },
    fc
      .tuple(
        fc.uniqueArray(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 3 }),
        fc.array(values, { minLength: 3, maxLength: 3 }),
      )
      .map(([halves, to]) =>
        halves.toSorted((a, b) => a - b).map((half, k) => ({ at: beatValue(half, 2), value: to[k] ?? 0 })),
      ),
  )

/** Figures over all dances with all that a description can say, as a model that texts are made from. */
export const generatedDescription: fc.Arbitrary<Figure> = fc
  .record({
    id: fc.constantFrom(...(Object.keys(dances) as DanceId[])),
    kinds: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 8 }),
    title: words,
    about: fc.oneof(fc.constant(''), words),
    role: fc.constantFrom('leader' as const, 'follower' as const),
    firstFoot: fc.constantFrom('left' as const, 'right' as const),
    freeFoot: sometimes(fc.constantFrom<Direction>('side', 'back', 'cross behind')),
    convention: fc.constantFrom('split on the count' as const, 'full on the count' as const, 'struck' as const),
    starts: sometimes(alignment),
    source,
    stepsSource: sometimes(source),
    actions: fc.array(action, { minLength: 8, maxLength: 8 }),
    bodyTurn: points(eighth.map(turn)),
    rise: points(fc.integer({ min: 0, max: 100 }).map((part) => part / 100)),
    sway: points(fc.constantFrom(-1, -0.5, 0, 0.5, 1)),
  })
  .map(({ id, kinds, actions, source: from, bodyTurn, rise, sway, ...more }): Figure => {
    const signs = signsOf(id, kinds)
    return {
      ...more,
      id: 'made',
      dance: id,
      ends: null,
      timings: [{ ...signs, source: from }],
      actions: actions.slice(0, signs.signs.length),
      tracks: { bodyTurn, rise, sway },
    }
  })
