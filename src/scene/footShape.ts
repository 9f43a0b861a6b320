import type { Foot } from '../figure/figure.ts'
import type { Place } from '../pose/footPosition.ts'
import { add, turn, type Vector } from '../pose/vector.ts'
import { footprintOutline, heelLine } from './footprint.ts'

/** A foot on the floor as shapes, in metres of the floor; x and y in turn. */
export type FootShape = { readonly outline: readonly number[]; readonly heel: readonly number[] }

/** @param length of the foot, metres */
export function footShape(foot: Foot, place: Place, length: number): FootShape {
  const laid = (points: readonly number[]): number[] =>
    Array.from({ length: points.length / 2 }, (_, k): Vector => {
      const point = { x: (points[2 * k] as number) * length, y: (points[2 * k + 1] as number) * length }
      return add(place, turn(point, place.heading))
    }).flatMap(({ x, y }) => [x, y])
  return { outline: laid(footprintOutline(foot)), heel: laid(heelLine(foot)) }
}
