import { expect } from 'vitest'

const SIGNS = '⅛¼⅜½⅝¾⅞'
/** A size as it must be written: "½", "1", "1¼". */
export function sizeOf(written: string): number {
  const [, whole = '', sign = ''] = /^([1-9]\d*)?([⅛¼⅜½⅝¾⅞])?$/.exec(written) ?? expect.fail(`${written} is no size`)
  return Number(whole) + (sign === '' ? 0 : (SIGNS.indexOf(sign) + 1) / 8)
}
/** "½ beat", "1 beat", "1½ beats". */
export function beatsOf(written: string): number {
  const [, size = '', beats] = /^(\S+) (beats?)$/.exec(written) ?? expect.fail(`${written} are no beats`)
  expect(beats, written).toBe(sizeOf(size) > 1 ? 'beats' : 'beat')
  return sizeOf(size)
}

/** "step 2", "steps 2 and 3", "steps 1 to 3 and 5" → indices; and the other way round, for there is one way to write them. */
export function stepsOf(written: string): number[] {
  const [, plural, list = ''] = /^step(s?) (.+)$/.exec(written) ?? expect.fail(`${written} are no steps`)
  expect(list).toMatch(/^[\d to]+(?:(?:, [\d to]+)* and [\d to]+)?$/)
  const steps = list.split(/, | and /).flatMap((part) => {
    const [, from = '', to = from] = /^(\d+)(?: to (\d+))?$/.exec(part) ?? expect.fail(`${written}: ${part}`)
    if (from !== to) expect(Number(to) - Number(from), written).toBeGreaterThanOrEqual(2)
    return Array.from({ length: Number(to) - Number(from) + 1 }, (_, k) => Number(from) + k - 1)
  })
  expect(steps, written).toEqual([...new Set(steps)].sort((a, b) => a - b))
  expect(plural === 's', written).toBe(steps.length > 1)
  for (const [k, step] of steps.entries()) {
    // Three neighbours are written as a run.
    if (steps[k + 2] === step + 2) expect(list, written).not.toContain(`${step + 1}, ${step + 2}`)
  }
  return steps
}
