import { faultOf, faults, wayOf } from '../transfer/faults.ts'
import type { Way, WayKind } from '../transfer/way.ts'
import { performanceKinds } from '../words/performanceKinds.ts'
import { fractionIn, given, type Option, oneOf, type Parsed } from './options.ts'

/** Which performances are asked for. */
export type AskedWays = {
  readonly ways: readonly Way[]
  /** Every fault there is: those that change nothing in the figure are then left out. */
  readonly all: boolean
}

const ALL = 'all'
/** Two faults have an option of their own for how much. */
const OWN_AMOUNT: Readonly<Partial<Record<WayKind, Option>>> = { late: 'late', early: 'early-part' }

/** "2,3" as indices, from 0; null where none are given, or what is given are none. */
function readSteps(parsed: Parsed): readonly number[] | null {
  const value = given(parsed, 'steps')
  if (value === null) return null
  if (/^ *[1-9]\d{0,3}( *, *[1-9]\d{0,3})* *$/.test(value)) return value.split(',').map((step) => Number(step) - 1)
  parsed.wrong.push({ kind: 'no steps', value })
  return null
}

/** The steps a fault is to be made on; what cannot be is said. */
function stepsFor(parsed: Parsed, word: string, kind: WayKind | null): readonly number[] {
  const steps = readSteps(parsed) ?? []
  const on = kind === null || kind === 'in time' ? 'all' : faultOf(kind).on
  if (on === 'all' && parsed.values.steps !== undefined) {
    parsed.wrong.push({ kind: 'not with', option: 'steps', performance: word })
  }
  const different = [...new Set(steps)]
  if (on === 'one' && different.length > 1) {
    parsed.wrong.push({ kind: 'one step only', performance: word, steps: different.map((index) => index + 1) })
  }
  return steps
}

/** How much of a fault, by --amount or by its own option; what cannot be is said. */
function amountFor(parsed: Parsed, word: string, kind: WayKind | null, own: number | null): number | undefined {
  if (parsed.values.amount === undefined) return own ?? undefined
  const amount = kind === null || kind === 'in time' ? null : faultOf(kind).amount
  if (amount === null) {
    parsed.wrong.push({ kind: 'not with', option: 'amount', performance: word })
    return undefined
  }
  const much = fractionIn(parsed, 'amount', amount)
  const other = kind === null ? undefined : OWN_AMOUNT[kind]
  if (other !== undefined && parsed.values[other] !== undefined) {
    parsed.wrong.push({ kind: 'said twice', options: ['amount', other] })
  }
  return much ?? undefined
}

/** @param several whether all can be asked for at once */
export function readWays(parsed: Parsed, several: boolean): AskedWays {
  const words = [...performanceKinds.keys(), ...(several ? [ALL] : [])]
  const word = oneOf(parsed, 'performance', words, 'in-time')
  const own = new Map<WayKind, number | null>()
  for (const { kind, amount } of faults) {
    const option = OWN_AMOUNT[kind]
    if (option !== undefined && amount !== null) own.set(kind, fractionIn(parsed, option, amount))
  }
  // What goes with a performance that does not exist cannot be said.
  if (word === null) return { ways: [], all: false }
  const kind = word === ALL ? null : (performanceKinds.get(word) ?? null)
  const amount = amountFor(parsed, word, kind, kind === null ? null : (own.get(kind) ?? null))
  const steps = stepsFor(parsed, word, kind)
  if (kind !== null) return { ways: [wayOf(kind, amount, steps)], all: false }
  return { ways: faults.map(({ kind }) => wayOf(kind, own.get(kind) ?? undefined)), all: true }
}
