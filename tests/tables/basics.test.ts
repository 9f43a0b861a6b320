import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parseFigure } from '../../src/figure/parse.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { type FloorAction, layOutFloor } from '../../src/pose/floor.ts'
import { basicsTable } from './basicsTable.ts'

const folder = new URL('basics/', import.meta.url)
const SUFFIX = '.figure.yaml'
const names = Object.keys(basicsTable)

/** Degrees by which a step may go off the chart's way: feet that keep their own tracks zigzag a little. */
const OFF = 15
const EIGHTH = 45

const degrees = (radians: number): number => (radians * 180) / Math.PI
/** Between two angles in degrees, 0 to 180. */
const apart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180)
const numbers = (text: string): readonly number[] => text.split(' ').map(Number)
const wayOf = ({ restBefore, rest }: FloorAction): number =>
  degrees(Math.atan2(rest.x - restBefore.x, rest.y - restBefore.y))

function read(name: string) {
  const result = parseFigure(readFileSync(new URL(name + SUFFIX, folder), 'utf8'), name + SUFFIX)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result
}

function floorOf(name: string) {
  const { figure } = read(name)
  const carried = figure.actions.map(({ weight }) => weight)
  const touches = figure.actions.map(() => null)
  return layOutFloor(figure, carried, touches, bodyWithFeet(1))
}

test('every file of the basics has its row: seventeen figures and the left closed change, both roles', () => {
  expect(readdirSync(folder).sort()).toEqual(names.map((name) => name + SUFFIX).sort())
  for (const role of ['leader', 'follower']) expect(names.filter((name) => name.endsWith(role))).toHaveLength(18)
})

describe.each(Object.entries(basicsTable))('%s', (name, basic) => {
  test('parses with no errors and no warnings, and says where it comes from', () => {
    const { figure, warnings } = read(name)
    expect(warnings).toEqual([])
    expect(name).toBe(`${name.replace(/-\w+$/, '')}-${figure.role}`)
    expect(figure.stepsSource).not.toBeNull()
    expect(figure.about.length).toBeGreaterThan(20)
  })

  test('layOutFloor points each foot as the chart says', () => {
    const { start, actions } = floorOf(name)
    expect(apart(degrees(start[start.standing].heading), basic.starts * EIGHTH)).toBeLessThan(1e-6)
    const points = numbers(basic.points)
    expect(actions).toHaveLength(points.length)
    for (const [index, { place }] of actions.entries()) {
      expect(apart(degrees(place.heading), (points[index] as number) * EIGHTH), `step ${index + 1}`).toBeLessThan(1e-6)
    }
  })

  test('its turns add up to the chart’s, for the feet and for the body, and end where it ends', () => {
    const { figure } = read(name)
    const { start, actions } = floorOf(name)
    const last = actions.at(-1)?.facing ?? Number.NaN
    expect(degrees(last - start[start.standing].heading)).toBeCloseTo(basic.turn * EIGHTH, 9)
    expect(apart(degrees(last), basic.ends * EIGHTH)).toBeLessThan(1e-6)
    const body = figure.tracks.bodyTurn.at(-1)
    if (body) expect(degrees(body.value)).toBeCloseTo(basic.turn * EIGHTH, 9)
  })

  test(`carries the weight the chart's way on each step, within ${OFF} degrees`, () => {
    const ways = numbers(basic.goes)
    for (const [index, action] of floorOf(name).actions.entries()) {
      const way = wayOf(action)
      const said = `step ${index + 1} goes ${way.toFixed(1)}, not ${ways[index]}`
      expect(apart(way, ways[index] as number), said).toBeLessThan(OFF)
    }
  })
})

test('the second step of a waltz turn goes on within 15 degrees of the first', () => {
  for (const name of ['waltz-natural-turn-leader', 'waltz-reverse-turn-leader']) {
    const [first, second] = floorOf(name).actions.map(wayOf)
    expect(apart(first as number, second as number), name).toBeLessThan(OFF)
  }
})

/** Figures tied to the room, danced in closed hold or outside the partner: one dancer faces what the other backs. */
const couples = names.flatMap((name) => {
  const figure = name.replace(/-leader$/, '')
  const isTied = name !== figure && read(name).figure.starts !== null
  return isTied ? [figure] : []
})

describe.each(couples)('%s, the two partners', (couple) => {
  test('end half a turn apart; in promenade, a quarter', () => {
    const [leader, follower] = ['leader', 'follower'].map((role) => floorOf(`${couple}-${role}`).actions.at(-1)?.facing)
    const between = apart(degrees(leader as number), degrees(follower as number))
    expect(between).toBeCloseTo(couple === 'waltz-whisk' ? 90 : 180, 6)
  })

  test('go the same way on each step, within an eighth beside the own tracks of each', () => {
    const leader = floorOf(`${couple}-leader`).actions
    const follower = floorOf(`${couple}-follower`).actions
    for (const [index, action] of leader.entries()) {
      const between = apart(wayOf(action), wayOf(follower[index] as FloorAction))
      expect(between, `step ${index + 1}`).toBeLessThan(EIGHTH + 2 * OFF)
    }
  })
})
