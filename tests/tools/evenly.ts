import fc from 'fast-check'

/** Any number between two, each as likely: `fc.double` mostly gives the ends and numbers next to nothing. */
export const evenly = (from: number, to: number): fc.Arbitrary<number> =>
  fc.noBias(fc.integer({ min: 0, max: 10_000 })).map((k) => from + ((to - from) * k) / 10_000)
