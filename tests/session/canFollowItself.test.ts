import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import type { Figure } from '../../src/figure/figure.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { type Floor, layOutFloor } from '../../src/pose/floor.ts'
import { type Pose, pose } from '../../src/pose/pose.ts'
import { subtract, turn } from '../../src/pose/vector.ts'
import { canFollowItself, type Following, joinedBeats, type WhyNot } from '../../src/session/canFollowItself.ts'
import { repeatedFigure } from '../../src/session/repeatedFigure.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { actingFeet, otherFoot } from '../../src/transfer/actingFeet.ts'
import { beatValue, radians, share } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { exampleFigure, walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'
import { near } from '../tools/near.ts'

const QUARTER = radians(Math.PI / 2)
const told = (following: Following): string =>
  following.can
    ? `${following.swapped ? 'feet swapped' : 'same feet'}, ${following.round} × ${following.rounds}`
    : following.why
const weights = ({ actions }: Figure) => actions.map(({ weight }) => weight)
const floorOf = (figure: Figure): Floor =>
  layOutFloor(
    figure,
    weights(figure),
    figure.actions.map(() => null),
    bodyWithFeet(1),
  )

describe('canFollowItself(figure)', () => {
  test('all demos', () => {
    expect(demos.map((figure) => `${figure.id.slice(0, 2)} ${told(canFollowItself(figure))}`)).toEqual([
      // Three changes: the left foot begins the second round.
      '01 feet swapped, 4 × 2',
      '02 same feet, 4 × 1',
      '03 same feet, 4 × 1',
      '04 same feet, 4 × 1',
      // Four actions and two changes: a tap is none.
      '05 same feet, 4 × 1',
      '06 same feet, 6 × 1',
      '07 same feet, 3 × 1',
      '08 same feet, 8 × 1',
      '09 same feet, 4 × 1',
      '10 same feet, 3 × 1',
      '11 same feet, 3 × 1',
      // A bar and a half: the second round begins on 3.
      '12 same feet, 6 × 2',
      // From facing diagonally to wall to facing diagonally to centre: another figure follows there.
      '13 another way',
      '14 feet swapped, 4 × 2',
      '15 feet swapped, 4 × 2',
      '16 same feet, 8 × 1',
      '17 same feet, 8 × 1',
      '18 same feet, 4 × 1',
      // Rock and one chassé: five changes.
      '19 feet swapped, 4 × 2',
      '20 same feet, 6 × 2',
      '21 another way',
      '22 same feet, 18 × 2',
      '23 same feet, 8 × 1',
      '24 feet swapped, 8 × 2',
    ])
  })
  test.each<[WhyNot, Figure]>([
    [
      'weight on both feet',
      exampleFigure('rumba', [1, 1, 2], ['forward', 'in place', { direction: 'side', weight: share(0.5) }]),
    ],
    ['another foot', exampleFigure('waltz', [1, 1, 1], ['forward', { direction: 'side', turn: QUARTER }, 'close'])],
    [
      'partners elsewhere',
      exampleFigure('waltz', [1, 1, 1, 1], ['forward', 'side', 'close', { direction: 'side', position: 'promenade' }]),
    ],
    [
      'another way',
      exampleFigure('waltz', [1, 1, 1, 1], ['forward', { direction: 'side', turn: QUARTER }, 'close', 'back'], {
        starts: { way: 'facing', to: 'line of dance' },
      }),
    ],
    // Begins with the free foot put down where it stands, and ends with it half a metre away.
    ['feet elsewhere', exampleFigure('rumba', [1, 1, 1, 1], ['in place', 'in place', 'side', 'side'])],
    [
      'still moving',
      exampleFigure('foxtrot', [1, 1], ['forward', { direction: 'forward', moments: { full: beatValue(3, 2) } }]),
    ],
  ])('%s', (why, figure) => {
    expect(canFollowItself(figure)).toEqual({ can: false, why })
  })
  test('a turn is no hindrance where the figure is not tied to the room, and is told', () => {
    const box = exampleFigure(
      'waltz',
      [1, 1, 1, 1, 1, 1],
      ['forward', { direction: 'side', turn: QUARTER }, 'close', 'back', 'side', 'close'],
    )
    expect(canFollowItself(box)).toEqual({ can: true, swapped: false, round: 6, rounds: 1, turned: QUARTER })
    const starts = { way: 'facing', to: 'wall' } as const
    expect(told(canFollowItself({ ...box, starts }))).toBe('another way')
    const whole = box.actions.map((action, k) => (k === 1 ? { ...action, turn: radians(2 * Math.PI) } : action))
    expect(told(canFollowItself({ ...box, starts, actions: whole }))).toBe('same feet, 6 × 1')
  })
  test('a figure of one whole beat in 3/4 comes round to the bar, and to the foot, after six', () => {
    const following = canFollowItself(walks('waltz', [1]))
    expect(told(following)).toBe('feet swapped, 1 × 6')
    if (following.can) expect(joinedBeats(following)).toBe(6)
  })
  test('no such timing: a RangeError', () => {
    expect(() => canFollowItself(walks('waltz', [1, 1, 1]), 1)).toThrow(RangeError)
  })

  /** Feet and weight as a dancer sees them who stands on the weight; in a mirror with feet exchanged. */
  const seen = ({ left, right, weight }: Pose, facing: number, mirrored: boolean): number[] => {
    const [a, b] = mirrored ? [right, left] : [left, right]
    const side = mirrored ? -1 : 1
    return [a, b].flatMap((foot) => {
      const { x, y } = turn(subtract(foot, weight), -facing)
      return [side * x, y, foot.height, foot.load]
    })
  }
  const CENTIMETRE = 0.01
  test('generated figures that can: the second round is the first again, moved, turned, and mirrored where feet are swapped', () => {
    let [same, swapped] = [0, 0]
    fc.assert(
      fc.property(generatedFigure({ turns: true }), (figure) => {
        const following = canFollowItself(figure)
        if (!following.can) return
        if (following.swapped) swapped++
        else same++
        const count = figure.actions.length
        const twice = repeatedFigure(figure, 0, 2)
        const floor = floorOf(twice)
        const feet = actingFeet(twice, weights(twice))
        const wanted = feet.slice(0, count).map((foot) => (following.swapped ? otherFoot(foot) : foot))
        expect(feet.slice(count)).toEqual(wanted)
        // From the end of the first action on, when its foot has come to its place; the last one's end is another matter.
        for (let p = 1; p <= count - 1; p += 0.5) {
          const facing = floor.actions[Math.ceil(p) - 1]?.facing ?? 0
          const [first, second] = [
            seen(pose(floor, p), facing, false),
            seen(pose(floor, p + count), facing + following.turned, following.swapped),
          ]
          for (const [k, value] of first.entries()) near(second[k], value, 0.1 + CENTIMETRE, 'at', p, 'part', k)
        }
      }),
      THOUSAND,
    )
    expect(Math.min(same, swapped)).toBeGreaterThan(50)
  })
  test('generated figures that can: their moments come round too, and after all rounds foot and count are the first again', () => {
    fc.assert(
      fc.property(generatedFigure(), (figure) => {
        const following = canFollowItself(figure)
        if (!following.can) return
        const { round, rounds } = following
        const [once, many] = [schedule(figure), schedule(repeatedFigure(figure, 0, rounds + 1))]
        const count = figure.actions.length
        for (const [index, { called, moments }] of once.actions.entries()) {
          for (let k = 0; k <= rounds; k++) {
            const again = many.actions[index + k * count]
            near(again?.called, called + k * round, 1e-9)
            near(again?.moments.full, moments.full + k * round, 1e-9, 'full', index, k)
          }
        }
        expect(joinedBeats(following) % dances[figure.dance].beatsPerBar).toBe(0)
        const feet = actingFeet(many.figure, weights(many.figure))
        expect(feet[rounds * count]).toBe(figure.firstFoot)
      }),
      THOUSAND,
    )
  })
  test('generated figures that cannot: with part weight at the end there is no free foot; turns are not mirrored', () => {
    const found = new Set<string>()
    fc.assert(
      fc.property(generatedFigure({ turns: true }), (figure) => {
        const following = canFollowItself(figure)
        if (following.can) return
        found.add(following.why)
        const last = floorOf(figure).actions.at(-1)
        const isShared = last !== undefined && last.loadAfter > 0 && last.loadAfter < 1
        expect(following.why === 'weight on both feet').toBe(isShared)
        if (following.why !== 'another foot') return
        const changes = figure.actions.filter(({ weight, direction }) => weight > 0 && direction !== 'hold').length
        expect(changes % 2).toBe(1)
        expect(figure.actions.some((action) => action.turn !== 0 || action.footTurn !== null)).toBe(true)
      }),
      THOUSAND,
    )
    expect([...found].sort()).toEqual(['another foot', 'feet elsewhere', 'weight on both feet'])
  })
})
