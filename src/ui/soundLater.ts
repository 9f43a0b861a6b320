/** By how much the sound may be said to come later than the picture, and how finely; in seconds. */
export const soundLater = { most: 0.4, step: 0.01 } as const
