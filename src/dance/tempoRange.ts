import type { TempoRange } from './dance.ts'
import { published } from './published.ts'

/** A published range in bars a minute, both ends included; `from` and `to` are equal where one tempo is printed. */
export const tempoRange = (from: number, to: number, ...texts: readonly [...string[], string]): TempoRange => ({
  from,
  to,
  source: published(...texts),
})
