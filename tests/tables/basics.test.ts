import { describe, expect, test } from 'vitest'
import { parseFigure } from '../../src/figure/parse.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { layOutFloor } from '../../src/pose/floor.ts'
import { type Basic, basics } from './basics.ts'

/** Between two angles in degrees, 0 to 180. */
const apart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180)
const degrees = (radians: number): number => (radians * 180) / Math.PI

function read({ text }: Basic) {
  const result = parseFigure(text, 'basic.figure.yaml')
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  return result
}

function floorOf(basic: Basic) {
  const { figure } = read(basic)
  const carried = figure.actions.map(({ weight }) => weight)
  return layOutFloor(
    figure,
    carried,
    figure.actions.map(() => null),
    bodyWithFeet(1),
  )
}

describe.each(basics.map((basic) => [basic.name, basic] as const))('%s', (_, basic) => {
  test('its chart agrees with itself: no warning of an alignment', () => {
    expect(read(basic).warnings).toEqual([])
  })

  test('each foot is placed where the chart has it point, and the turns add up', () => {
    const floor = floorOf(basic)
    expect(floor.actions).toHaveLength(basic.steps.length)
    for (const [index, { place }] of floor.actions.entries()) {
      const [heading = Number.NaN] = basic.steps[index] ?? []
      expect(apart(degrees(place.heading), heading * 45), `action ${index + 1}`).toBeLessThan(1e-6)
    }
    const first = degrees(floor.start[floor.start.standing].heading)
    const last = floor.actions.at(-1)
    expect(degrees(last?.facing ?? Number.NaN) - first).toBeCloseTo(basic.turn * 45, 9)
  })

  test('the weight goes each step’s way, within 15 degrees', () => {
    for (const [index, { restBefore, rest }] of floorOf(basic).actions.entries()) {
      const way = degrees(Math.atan2(rest.x - restBefore.x, rest.y - restBefore.y))
      const [, expected = Number.NaN] = basic.steps[index] ?? []
      expect(apart(way, expected), `action ${index + 1} goes ${way.toFixed(1)}, not ${expected}`).toBeLessThan(15)
    }
  })
})

test('the second step of a waltz natural turn goes on within 15 degrees of the first', () => {
  const [one, two] = floorOf(basics.find(({ name }) => name === 'Waltz, natural turn, leader') as Basic).actions
  const way = (action: typeof one) => {
    if (action === undefined) throw new Error('no action')
    return degrees(Math.atan2(action.rest.x - action.restBefore.x, action.rest.y - action.restBefore.y))
  }
  expect(apart(way(one), way(two))).toBeLessThan(15)
})

test('the seventeen basics are there, one role of each at least', () => {
  const names = new Set(basics.map(({ name }) => name.replace(/, (leader|follower)$/, '')))
  expect(names.size).toBe(17)
})
