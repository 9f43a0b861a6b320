import { type FaultKind, wayOf } from '../../src/transfer/faults.ts'
import type { Way } from '../../src/transfer/way.ts'

/** Of a kind, its usual amount: on all steps, and where it can be on chosen ones also on the second and the third alone. */
export const waysOf = (kind: FaultKind, on: string): Way[] =>
  (on === 'all' ? [[]] : [[], [1], [2]]).map((steps) => wayOf(kind, undefined, steps))
