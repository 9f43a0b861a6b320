import type { Fault } from '../problem.ts'

/** What is wrong with a text, and how far inside it, from 0, where only a part of it is. */
export type Slip = { readonly fault: Fault; readonly at?: number }

/** What reading a piece of text gives: its meaning, or all that is wrong with it. */
export type Reading<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly slips: readonly Slip[] }

/** A reading that went well. */
export const read = <Value>(value: Value): Reading<Value> => ({ ok: true, value })

/** A reading that did not. */
export const refuse = (fault: Fault): Reading<never> => ({ ok: false, slips: [{ fault }] })
