import { expect } from 'vitest'

/**
 * Fails unless `actual` is within so much of `wanted`. For where there are hundreds of thousands: quicker than a matcher.
 * @param what it is, in parts that are put together only when it fails
 */
export function near(actual: number | undefined, wanted: number, within: number, ...what: (string | number)[]): void {
  if (actual !== undefined && Math.abs(actual - wanted) <= within) return
  expect.fail([...what, `${actual} is not within ${within} of ${wanted}`].join(' '))
}
