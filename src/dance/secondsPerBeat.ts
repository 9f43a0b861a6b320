import { type Seconds, seconds } from '../units.ts'
import { beatsPerMinute } from './beatsPerMinute.ts'
import type { Dance } from './dance.ts'

/**
 * How long a beat lasts, as danced (tango: in four), at a tempo in bars a minute: 60 / (bars a minute × beats a bar).
 * @throws RangeError unless the tempo is a finite number above 0
 */
export const secondsPerBeat = (dance: Pick<Dance, 'beatsPerBar'>, barsPerMinute: number): Seconds =>
  seconds(60 / beatsPerMinute(dance, barsPerMinute))
