import fc from 'fast-check'
import { type FaultKind, faultOf, wayOf } from '../../src/transfer/faults.ts'
import type { Way } from '../../src/transfer/way.ts'

/** As many as a generated figure has actions at the most. */
const INDICES = Array.from({ length: 10 }, (_, index) => index)

/** A fault of one kind, as much of it as can be, on all actions or on any of them; those that a figure has not do nothing. */
export function generatedWay(kind: FaultKind): fc.Arbitrary<Way> {
  const { amount } = faultOf(kind)
  const much =
    amount === null
      ? fc.constant(undefined)
      : fc.oneof(
          fc.constantFrom(...amount.choices, amount.from, amount.to),
          fc.double({ min: amount.from, max: amount.to, noNaN: true }),
        )
  const on = fc.oneof(fc.constant([]), fc.subarray(INDICES))
  return fc.tuple(much, on).map(([by, chosen]) => wayOf(kind, by, chosen))
}
