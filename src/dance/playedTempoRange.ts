import type { Dance } from './dance.ts'
import { defaultTempo } from './defaultTempo.ts'

// Own judgement. The top reaches every tempo that a body prints for the dance, but for the American style rumba.
const SLOWEST_PERCENT = 20
const FASTEST_PERCENT = 125

/** The tempi at which a dance may be played, in bars a minute, both ends included: 20 % to 125 % of its default. */
export function playedTempoRange(dance: Pick<Dance, 'tempo'>): { readonly from: number; readonly to: number } {
  const { barsPerMinute } = defaultTempo(dance)
  return { from: (barsPerMinute * SLOWEST_PERCENT) / 100, to: (barsPerMinute * FASTEST_PERCENT) / 100 }
}
