/** Whether two sounds are the same to the last bit. Quicker than a matcher, which takes a second for a second of sound. */
export const sameSamples = (a: Float32Array, b: Float32Array): boolean =>
  a.length === b.length && a.every((sample, k) => Object.is(sample, b[k]))
