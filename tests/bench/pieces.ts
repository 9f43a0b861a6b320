/**
 * A curve in pieces, each a cubic in its own x from 0 to 1, in one flat array: where the piece ends, where it begins,
 * one over its width, and four coefficients for each of its values.
 */
export type Pieces = Float64Array

/** Coefficients of x⁰, x¹, x² and x³. */
export type Cubic = readonly [number, number, number, number]

export type Piece = { readonly from: number; readonly to: number; readonly cubics: readonly Cubic[] }

/** Before the coefficients: end, begin, one over the width. */
const HEAD = 3

export const constant = (value: number): Cubic => [value, 0, 0, 0]

/** From `from` to `to`, leaving and reaching it with these velocities (a unit of x). */
export const hermiteCubic = (from: number, velocity: number, to: number, reaching: number): Cubic => [
  from,
  velocity,
  3 * (to - from) - 2 * velocity - reaching,
  velocity + reaching - 2 * (to - from),
]

/** Flat at both ends. */
export const smoothCubic = (from: number, to: number): Cubic => hermiteCubic(from, 0, to, 0)

/** @param pieces in order, each from where the one before ends; the last holds for ever */
export function flatPieces(pieces: readonly Piece[]): Pieces {
  const values = pieces[0]?.cubics.length ?? 0
  const size = HEAD + 4 * values
  const numbers = new Float64Array(pieces.length * size)
  pieces.forEach(({ from, to, cubics }, index) => {
    const end = index === pieces.length - 1 ? Number.POSITIVE_INFINITY : to
    numbers.set([end, from, to > from ? 1 / (to - from) : 0, ...cubics.flat()], index * size)
  })
  return numbers
}
