import { type Seconds, seconds } from '../units.ts'

/** Words begin before their beat: "quick" by 0.114 s. In seconds. */
export const BEFORE_THE_BEAT = 0.12
/** Where one sound gives way to another, up to this part of a beat before it: no earlier call has room there. */
const GIVES_WAY = 0.2

/** How long before a change of tempo its sound takes the place of the former. @param shorter of the two beats, seconds */
export const riseBefore = (shorter: number): Seconds => seconds(Math.min(BEFORE_THE_BEAT, GIVES_WAY * shorter))
