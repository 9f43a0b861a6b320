/**
 * Halves closer than this, in seconds, are not followed one by one: the fastest that people tap with every click is about
 * 0.15 to 0.2 s (Repp, Psychon. Bull. Rev. 12:969–992, 2005; the number from memory).
 */
const CLOSEST = 0.2

/** Whether half beats are too close together to be heard apart: then they are off unless somebody wants them. */
export const halvesBlur = (secondsPerBeat: number): boolean => secondsPerBeat / 2 < CLOSEST
