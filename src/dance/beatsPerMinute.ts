import type { Dance } from './dance.ts'

/**
 * Beats a minute, as danced (tango: in four), at a tempo in bars a minute.
 * @throws RangeError unless the tempo is a finite number above 0
 */
export function beatsPerMinute({ beatsPerBar }: Pick<Dance, 'beatsPerBar'>, barsPerMinute: number): number {
  if (!(barsPerMinute > 0 && Number.isFinite(barsPerMinute))) {
    throw new RangeError(`a tempo must be a finite number of bars a minute above 0, got ${barsPerMinute}`)
  }
  return barsPerMinute * beatsPerBar
}
