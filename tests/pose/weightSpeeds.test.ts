import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { layOutFloor } from '../../src/pose/floor.ts'
import { pose } from '../../src/pose/pose.ts'
import { weightSpeeds } from '../../src/pose/weightSpeeds.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { perform } from '../../src/transfer/perform.ts'
import { seconds } from '../../src/units.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'

const performed = (figure: ReturnType<typeof walks>) => {
  const { curve, carried } = perform(schedule(figure), { kind: 'in time' })
  const floor = layOutFloor(
    figure,
    carried,
    figure.actions.map(() => null),
    bodyWithFeet(1),
  )
  return { curve, floor }
}

test('weightSpeeds: stands at both ends, and has a sample at each hundredth of a second from the first leave on', () => {
  // Three beats of half a second, then of ⅓ s: 1.5 s, and 1 s.
  const { curve, floor } = performed(walks('foxtrot', [1, 1, 1]))
  expect(weightSpeeds(floor, curve, seconds(0.5), 100)).toHaveLength(151)
  const speeds = weightSpeeds(floor, curve, seconds(1 / 3), 100)
  expect(speeds).toHaveLength(101)
  for (const end of [speeds[0], speeds.at(-1)]) expect(end).toBeLessThan(0.01)
})

test('weightSpeeds: half the tempo, half the speed', () => {
  const { curve, floor } = performed(walks('foxtrot', [2, 1, 1]))
  const [quick, slow] = [weightSpeeds(floor, curve, seconds(0.5), 100), weightSpeeds(floor, curve, seconds(1), 100)]
  for (const [k, speed] of quick.entries()) expect(slow[2 * k]).toBeCloseTo(speed / 2, 1)
  expect(Math.max(...quick) / Math.max(...slow)).toBeCloseTo(2, 1)
})

test('weightSpeeds: added up they make the weight’s way, in generated figures over all dances', () => {
  fc.assert(
    fc.property(generatedFigure({ turns: true }), (figure) => {
      const { curve, floor } = performed(figure)
      const rate = 1000
      const beatLasts = seconds(0.5)
      const sum = weightSpeeds(floor, curve, beatLasts, rate).reduce((all, speed) => all + speed / rate, 0)
      const parts = Math.ceil((curve.to - curve.from) * beatLasts * rate)
      const places = Array.from(
        { length: parts + 1 },
        (_, k) => pose(floor, curve.at(curve.from + k / rate / beatLasts)).weight,
      )
      const way = places.slice(1).reduce((all, { x, y }, k) => {
        const before = places[k] as (typeof places)[number]
        return all + Math.hypot(x - before.x, y - before.y)
      }, 0)
      // To a thousandth of the way, or a millimetre.
      expect(Math.abs(sum - way)).toBeLessThan(Math.max(0.001, way / 1000))
    }),
    { ...THOUSAND, numRuns: 100 },
  )
})
