import type { Fault } from '../problem.ts'

/** What reading a piece of text gives: its meaning, or what is wrong with it. */
export type Reading<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly fault: Fault }

/** A reading that went well. */
export const read = <Value>(value: Value): Reading<Value> => ({ ok: true, value })

/** A reading that did not. */
export const refuse = (fault: Fault): Reading<never> => ({ ok: false, fault })
