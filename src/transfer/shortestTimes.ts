import { seconds } from '../units.ts'

/**
 * The shortest time in which a dancer carries the weight across: comfortably, and at the least (own judgement; a walk
 * turns into a run at some 0.43 s a step).
 */
export const shortestTimes = { comfortable: seconds(0.42), quickest: seconds(0.25) } as const
