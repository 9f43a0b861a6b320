import { type BeatValue, beatValue } from '../units.ts'
import type { Dance } from './dance.ts'
import { published } from './published.ts'
import { titles } from './titles.ts'

/**
 * What the signs are worth in beats as danced. S and Q differ by dance; & and a do not.
 * @param texts where S and Q come from, before the texts on & and a
 */
export const signs = (S: BeatValue | null, Q: BeatValue | null, ...texts: readonly string[]): Dance['signs'] => ({
  S,
  Q,
  '&': beatValue(1, 2),
  a: beatValue(1, 4),
  source: published(...texts, titles.finch, titles.tidBitsSplits, titles.roundGlossary),
})
