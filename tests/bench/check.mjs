/**
 * What one check found.
 * @typedef {object} Check
 * @property {string} name what is held against what
 * @property {number} measured the ratio, or a count of frames
 * @property {number} limit
 * @property {'at most' | 'at least'} bound
 * @property {Readonly<Record<string, number | string | readonly number[]>>} samples what it was worked out from, with units
 */

/** Whether it misses its limit; something that is no number does. @param {Check} check */
export const isMissed = ({ measured, limit, bound }) => !(bound === 'at most' ? measured <= limit : measured >= limit)
