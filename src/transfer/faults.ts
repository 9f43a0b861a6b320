import type { Source } from '../dance/dance.ts'
import { beat, share } from '../units.ts'
import type { Way, WayKind } from './way.ts'

export type FaultKind = Exclude<WayKind, 'in time'>

/** How much of a fault: in beats, or as a part of the step's time or of the weight. */
export type Amount = {
  readonly key: 'by' | 'part'
  readonly from: number
  readonly to: number
  /** What it is unless somebody sets it. */
  readonly usual: number
  /** What is offered, within [from, to]. */
  readonly choices: readonly number[]
}

/** One way in which a figure goes wrong (or only otherwise: dynamics). What it does: `perform`. What is said of it: words. */
export type Fault = {
  readonly kind: FaultKind
  /** What it is a fault of. */
  readonly of: 'timing' | 'rhythm' | 'weight' | 'dynamics'
  /** null: there is nothing to set. */
  readonly amount: Amount | null
  /** On which actions it can be made: any that are chosen, exactly one, or the whole figure only. */
  readonly on: 'chosen' | 'one' | 'all'
  /** What follows depends on how quickly the dancer can move, so on the tempo. */
  readonly usesTempo: boolean
  /** The demo on which it is best seen, by the beginning of its file's name. */
  readonly demo: string
  readonly source: Source
}

const common: Source = { provenance: 'common practice', text: '' }
const published = (text: string): Source => ({ provenance: 'published', text })
const own: Source = { provenance: 'own judgement', text: '' }

/** Half a beat late is what the eye and the grid see best. */
const beats = (from: number, to: number, usual: number, ...choices: number[]): Amount => ({
  ...{ key: 'by', from, to, usual, choices },
})
const part = (from: number, to: number, usual: number, ...choices: number[]): Amount => ({
  ...{ key: 'part', from, to, usual, choices },
})

export const faults: readonly Fault[] = [
  {
    // On chosen actions only the others make up for it, as quickly as the dancer can.
    ...{ kind: 'late', of: 'timing', on: 'chosen', usesTempo: true, demo: '01', source: common },
    amount: beats(0, 1, 0.5, 0, 0.25, 0.5, 0.75, 1),
  },
  {
    ...{ kind: 'hurrying', of: 'timing', on: 'chosen', usesTempo: true, demo: '01', source: common },
    amount: beats(0, 1, 0.5, 0.25, 0.5, 0.75, 1),
  },
  {
    ...{ kind: 'early', of: 'timing', on: 'chosen', usesTempo: false, demo: '01' },
    amount: part(0.25, 1, 0.5, 0.25, 0.5, 0.75),
    source: published('S. & D. Finch, Smoothing out those slows'),
  },
  {
    ...{ kind: 'ahead', of: 'timing', on: 'all', usesTempo: false, demo: '01' },
    amount: beats(0, 1, 0.5, 0.25, 0.5, 0.75, 1),
    source: published('S. & D. Finch, It’s all about time'),
  },
  {
    ...{ kind: 'gaining', of: 'timing', on: 'all', usesTempo: false, demo: '22', source: common },
    amount: beats(0, 0.25, 0.125, 0.125, 0.25),
  },
  {
    ...{ kind: 'foot first', of: 'weight', on: 'chosen', usesTempo: true, demo: '01', source: common },
    amount: beats(0, 1, 0.5, 0.25, 0.5, 0.75, 1),
  },
  { ...{ kind: 'placed', of: 'weight', on: 'all', usesTempo: true, demo: '07', source: common }, amount: null },
  { ...{ kind: 'cut short', of: 'rhythm', on: 'chosen', usesTempo: false, demo: '01', source: common }, amount: null },
  { ...{ kind: 'misplaced', of: 'rhythm', on: 'all', usesTempo: false, demo: '07', source: common }, amount: null },
  { ...{ kind: 'evened', of: 'rhythm', on: 'all', usesTempo: false, demo: '07', source: common }, amount: null },
  {
    ...{ kind: 'no change', of: 'weight', on: 'chosen', usesTempo: false, demo: '06' },
    amount: null,
    source: published('rec.arts.dance, lead-and-follow questions: weight change'),
  },
  { ...{ kind: 'stops', of: 'weight', on: 'chosen', usesTempo: false, demo: '01', source: common }, amount: null },
  {
    ...{ kind: 'part weight', of: 'weight', on: 'chosen', usesTempo: false, demo: '02', source: common },
    amount: part(0.5, 1, 0.75, 0.5, 0.75, 0.875),
  },
  {
    ...{ kind: 'slip', of: 'timing', on: 'one', usesTempo: true, demo: '23', source: common },
    amount: beats(0, 1, 0.5, 0.25, 0.5, 0.75, 1),
  },
  { ...{ kind: 'swelling', of: 'dynamics', on: 'all', usesTempo: false, demo: '01', source: own }, amount: null },
  { ...{ kind: 'arrested', of: 'dynamics', on: 'all', usesTempo: false, demo: '01', source: own }, amount: null },
]

/** @throws RangeError for "in time", which is none */
export function faultOf(kind: WayKind): Fault {
  const found = faults.find((fault) => fault.kind === kind)
  if (found === undefined) throw new RangeError(`"${kind}" is no fault`)
  return found
}

/** Whether what follows from a way depends on the tempo: not when every step is late alike. */
export const dependsOnTempo = (way: Way): boolean =>
  way.kind !== 'in time' && faultOf(way.kind).usesTempo && !(way.kind === 'late' && way.on === undefined)

/** How much of its fault a way has; null where there is nothing to set. */
export const amountOf = (way: Way): number | null => ('by' in way ? way.by : 'part' in way ? way.part : null)

/**
 * A way of dancing as data.
 * @param amount held in the fault's range; left out: the usual
 * @param on the chosen actions; left out or empty: all (of one slip: the first)
 */
export function wayOf(kind: WayKind, amount?: number, on: readonly number[] = []): Way {
  if (kind === 'in time') return { kind }
  const fault = faultOf(kind)
  const held =
    fault.amount === null ? 0 : Math.min(fault.amount.to, Math.max(fault.amount.from, amount ?? fault.amount.usual))
  const much = fault.amount === null ? {} : fault.amount.key === 'by' ? { by: beat(held) } : { part: share(held) }
  const rising = [...new Set(on)].sort((a, b) => a - b)
  const chosen =
    fault.on === 'all' || rising.length === 0 ? {} : { on: fault.on === 'one' ? rising.slice(0, 1) : rising }
  return { kind, ...much, ...chosen } as Way
}
