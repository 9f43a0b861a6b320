import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { alignmentEighths, roomEighths } from '../../src/figure/alignmentEighths.ts'
import { checkAlignments } from '../../src/figure/checkAlignments.ts'
import type { Action, Alignment, Direction, Figure, Position, RoomDirection } from '../../src/figure/figure.ts'
import { naturalOpposite } from '../../src/figure/naturalOpposite.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import { usualWeights } from '../../src/figure/usualWeights.ts'
import { writeFigure } from '../../src/figure/writeFigure.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { type Floor, layOutFloor } from '../../src/pose/floor.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { beatValue, radians } from '../../src/units.ts'
import { type ExampleAction, exampleFigure } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'
import { generatedInRoom } from '../tools/generateInRoom.ts'
import { readSources } from '../tools/readSources.ts'

const MINUTE = 60_000
const EIGHTH = Math.PI / 4
const DIRECTIONS = Object.keys(usualWeights) as readonly Direction[]
const ROOM = Object.keys(roomEighths) as readonly RoomDirection[]
/** The leader's right side and the follower's left are together, and the other way about (trade words: promenade). */
const OPEN: readonly Position[] = ['promenade', 'fallaway', 'counter promenade']
const turns = (share: number) => radians(share * 2 * Math.PI)

function floorOf(figure: Figure): Floor {
  const carried = figure.actions.map(({ weight }) => weight)
  const touches = figure.actions.map(() => null)
  return layOutFloor(figure, carried, touches, bodyWithFeet(1))
}

const figureOf = (actions: readonly ExampleAction[], more: Partial<Figure> = {}): Figure =>
  exampleFigure(
    'waltz',
    actions.map(() => 1),
    actions,
    more,
  )
const oppositeOf = (action: ExampleAction, more: Partial<Figure> = {}): Action =>
  naturalOpposite(figureOf([action], more)).actions[0] as Action

/** By how much one angle is beyond another, −π to π. */
function beyond(angle: number, other: number): number {
  const apart = angle - other
  return apart - 2 * Math.PI * Math.round(apart / (2 * Math.PI))
}

describe('naturalOpposite(figure), rule by rule', () => {
  test('the other role and the other foot; what names and times the figure stays', () => {
    const figure = figureOf(['forward', 'side', 'close'], { firstFoot: 'right', convention: 'struck' })
    const partner = naturalOpposite(figure)
    expect(partner).toMatchObject({ role: 'follower', firstFoot: 'left' })
    expect(naturalOpposite({ ...figure, role: 'follower', firstFoot: 'left' })).toMatchObject({
      role: 'leader',
      firstFoot: 'right',
    })
    for (const key of ['id', 'title', 'dance', 'convention', 'timings'] as const)
      expect(partner[key]).toEqual(figure[key])
  })

  test.each(DIRECTIONS)('%s: its words for ahead and behind change, no other', (direction) => {
    const changed: Readonly<Record<string, string>> = {
      forward: 'back',
      back: 'forward',
      'in front': 'behind',
      behind: 'in front',
    }
    const said = direction.replace(/forward|back|in front|behind/g, (word) => changed[word] as string)
    expect(oppositeOf(direction).direction).toBe(said)
    expect(naturalOpposite(figureOf(['side'], { freeFoot: direction })).freeFoot).toBe(said)
  })

  test.each(OPEN)('in %s the direction is kept, also of the free foot that it begins with', (position) => {
    for (const direction of DIRECTIONS) {
      expect(oppositeOf({ direction, position })).toMatchObject({ direction, position })
      expect(naturalOpposite(figureOf([{ direction, position }], { freeFoot: 'back' })).freeFoot).toBe('back')
    }
  })

  test('closed and outside partner it changes, and the position stays', () => {
    for (const position of ['closed', 'outside partner'] as const)
      expect(oppositeOf({ direction: 'forward', position })).toMatchObject({ direction: 'back', position })
  })

  test('the other side leads; size, placing, weight and moments stay; footwork and notes are dropped', () => {
    const action = {
      direction: 'forward' as const,
      size: 0.4 as Action['size'],
      placed: 'in CBMP' as const,
      moments: { full: beatValue(1, 2) },
      weight: 0.5 as Action['weight'],
    }
    const partner = oppositeOf({ ...action, leading: 'left', footwork: 'HT', note: 'A check.' })
    expect(partner).toMatchObject({ ...action, direction: 'back', leading: 'right', footwork: '', note: '' })
    expect(naturalOpposite(figureOf(['side'], { about: 'Wide.' })).about).toBe('')
  })

  test('turns, pivots and twists stay', () => {
    for (const kind of ['pivot', 'twist'] as const) {
      const footTurn = { kind, by: turns(-1 / 2) }
      expect(oppositeOf({ direction: 'back', turn: turns(1 / 3), footTurn })).toMatchObject({
        turn: turns(1 / 3),
        footTurn,
      })
    }
  })

  test('a heel turn is made between the steps, with the turn that is there', () => {
    const footTurn = { kind: 'heel turn', by: turns(3 / 8) } as const
    expect(oppositeOf({ direction: 'close', turn: turns(1 / 8), footTurn })).toMatchObject({
      direction: 'close',
      turn: turns(1 / 2),
      footTurn: null,
    })
    expect(oppositeOf({ direction: 'close', turn: turns(1 / 3), footTurn }).turn).toBe(turns(17 / 24))
    expect(oppositeOf({ direction: 'close', turn: turns(-3 / 8), footTurn }).turn).toBe(0)
  })

  test.each(ROOM)('%s: one faces what the other backs; who points, to the other side of the room', (to) => {
    const starts = (way: Alignment['way']) => naturalOpposite(figureOf(['side'], { starts: { way, to } })).starts
    expect(starts('facing')).toEqual({ way: 'backing', to })
    expect(starts('backing')).toEqual({ way: 'facing', to })
    const pointing = starts('pointing')
    expect(pointing?.way).toBe('pointing')
    expect(Math.abs(roomEighths[(pointing as Alignment).to] - roomEighths[to])).toBe(4)
    for (const way of ['facing', 'backing', 'pointing'] as const) {
      const alignment = { way, to }
      expect(oppositeOf({ direction: 'side', alignment }).alignment).toEqual(starts(way))
      expect(naturalOpposite(figureOf(['side'], { ends: alignment })).ends).toEqual(starts(way))
    }
  })

  test('sway is to the other side, rise and the body’s turn stay', () => {
    const at = beatValue(1)
    const track = (...values: number[]) => values.map((value) => ({ at, value }))
    const tracks = { bodyTurn: track(0.5), rise: track(0, 1), sway: track(-1, 0, 0.5) }
    const partner = naturalOpposite(figureOf(['side'], { tracks })).tracks
    expect(partner).toEqual({ bodyTurn: track(0.5), rise: track(0, 1), sway: track(1, 0, -0.5) })
  })

  test('its steps’ source says that they were made, and from whose, whatever the figure’s own was', () => {
    for (const role of ['leader', 'follower'] as const) {
      const stepsSource = { provenance: 'published', text: 'A book' } as const
      const { stepsSource: made } = naturalOpposite(figureOf(['side'], { role, stepsSource }))
      expect(made?.provenance).toBe('own judgement')
      expect(made?.text).toContain(role)
      expect(made?.text).not.toContain('A book')
    }
  })
})

describe('naturalOpposite(figure) in promenade: the two stand in a V, a quarter apart (from memory)', () => {
  /** Closed, opened to promenade, two steps in it, closed again: as in a tango link and closed promenade. */
  const leader = figureOf(
    [
      'forward',
      { direction: 'side', position: 'promenade' },
      { direction: 'forward', position: 'promenade', placed: 'across' },
      'tap',
      { direction: 'side', position: 'promenade' },
      'side',
    ],
    { firstFoot: 'right', starts: { way: 'facing', to: 'wall' }, ends: { way: 'facing', to: 'wall' } },
  )
  const follower = naturalOpposite(leader)

  test('the follower turns a quarter to the right into it, to the left out of it, and the leader not', () => {
    expect(follower.actions.map(({ turn }) => turn)).toEqual([0, turns(1 / 4), 0, 0, 0, turns(-1 / 4)])
    expect(naturalOpposite(follower).actions.map(({ turn }) => turn)).toEqual([0, 0, 0, 0, 0, 0])
    expect(checkAlignments(follower)).toEqual([])
  })

  test('in counter promenade the other way', () => {
    const counter = figureOf(['back', { direction: 'side', position: 'counter promenade' }, 'close'])
    expect(naturalOpposite(counter).actions.map(({ turn }) => turn)).toEqual([0, turns(-1 / 4), turns(1 / 4)])
  })

  test('a step to the side and one across then go the same way for both', () => {
    const [one, other] = [floorOf(leader).actions, floorOf(follower).actions]
    for (const index of [1, 2, 4]) {
      const [a, b] = [one[index], other[index]]
      if (!a || !b) throw new Error('no such action')
      expect(b.rest.x - b.restBefore.x, `x of ${index + 1}`).toBeCloseTo(a.rest.x - a.restBefore.x, 9)
      expect(b.rest.y - b.restBefore.y, `y of ${index + 1}`).toBeCloseTo(a.rest.y - a.restBefore.y, 9)
    }
  })

  test('a figure that begins in it begins a quarter apart; both face, or both back', () => {
    const starts = { way: 'facing', to: 'diagonally to wall' } as const
    const partner = naturalOpposite(figureOf([{ direction: 'side', position: 'promenade' }], { starts, ends: starts }))
    // The whisk ends so and the chassé from promenade begins so (permitted figures; from memory).
    expect(partner.starts).toEqual({ way: 'facing', to: 'diagonally to centre' })
    expect(partner.ends).toEqual(partner.starts)
    expect(partner.actions[0]?.turn).toBe(0)
  })

  test('the body’s turn is kept only where nothing opens or closes', () => {
    const bodyTurn = [{ at: beatValue(1), value: 0.5 }]
    const kept = (...actions: ExampleAction[]) =>
      naturalOpposite(figureOf(actions, { tracks: { bodyTurn, rise: [], sway: [] } })).tracks.bodyTurn
    const open = { direction: 'side', position: 'promenade' } as const
    expect(kept(open, open)).toEqual(bodyTurn)
    expect(kept(open, 'side')).toEqual([])
  })
})

const FACING: readonly Position[] = ['closed', 'outside partner']
const inAnyPosition = generatedFigure({ turns: true }).chain((figure) => generatedInRoom(figure, [...FACING, ...OPEN]))
const faceToFace = generatedFigure({ turns: true }).chain((figure) => generatedInRoom(figure, FACING))
const everyFigure = (made: fc.Arbitrary<Figure>, check: (figure: Figure, partner: Figure) => void) =>
  fc.assert(
    fc.property(made, (figure) => check(figure, naturalOpposite(figure))),
    THOUSAND,
  )
const hasHeelTurn = ({ actions }: Figure) => actions.some(({ footTurn }) => footTurn?.kind === 'heel turn')

describe('naturalOpposite(figure), 1,000 generated figures over all ten dances', { timeout: MINUTE }, () => {
  test('alignments agree with start and turns where the figure’s own do, and nowhere else', () => {
    const seen = { agree: 0, disagree: 0 }
    everyFigure(inAnyPosition, (figure, partner) => {
      const wrong = checkAlignments(figure).map(({ path }) => path)
      seen[wrong.length === 0 ? 'agree' : 'disagree'] += 1
      expect(checkAlignments(partner).map(({ path }) => path)).toEqual(wrong)
    })
    expect(Math.min(seen.agree, seen.disagree)).toBeGreaterThan(100)
  })

  test('all moments are the same', () => {
    everyFigure(inAnyPosition, (figure, partner) => {
      const times = (one: Figure) => schedule(one).actions.map(({ called, value, moments }) => [called, value, moments])
      expect(times(partner)).toEqual(times(figure))
      expect(schedule(partner).grid).toBe(schedule(figure).grid)
    })
  })

  test('face to face the other foot acts, headings are half a turn apart and all steps go the same way', () => {
    everyFigure(faceToFace, (figure, partner) => {
      const [one, other] = [floorOf(figure), floorOf(partner)]
      for (const [index, action] of one.actions.entries()) {
        const its = other.actions[index]
        if (its === undefined) throw new Error('an action is missing')
        expect(its.foot).not.toBe(action.foot)
        expect(Math.abs(beyond(its.facing, action.facing))).toBeCloseTo(Math.PI, 9)
        // A foot that stood through a heel turn has turned with it; the partner's has not.
        if (!hasHeelTurn(figure))
          expect(Math.abs(beyond(its.place.heading, action.place.heading))).toBeCloseTo(Math.PI, 9)
        // The natural opposite keeps the couple together: both weights go by the same way through the room.
        expect(its.rest.x).toBeCloseTo(action.rest.x, 9)
        expect(its.rest.y).toBeCloseTo(action.rest.y, 9)
      }
    })
  })

  test('in a V the follower is a quarter from facing the leader, and as face to face after it', () => {
    const seen = new Set<Position>()
    everyFigure(inAnyPosition, (figure, partner) => {
      const [one, other] = [floorOf(figure), floorOf(partner)]
      for (const [index, { position, weight }] of figure.actions.entries()) {
        if (position === null && weight === 0) continue
        const facings = [one.actions[index]?.facing, other.actions[index]?.facing] as [number, number]
        const [leader, follower] = figure.role === 'leader' ? facings : [facings[1], facings[0]]
        const open = position === null || FACING.includes(position) ? 0 : position === 'counter promenade' ? -1 : 1
        expect(Math.abs(beyond(follower, leader + Math.PI + (open * Math.PI) / 2))).toBeLessThan(1e-9)
        if (position !== null) seen.add(position)
      }
    })
    expect(seen.size).toBe(5)
  })

  test('the feet point as its alignments say at the start, by the floor', () => {
    everyFigure(inAnyPosition, (figure, partner) => {
      const { start } = floorOf(partner)
      const said = alignmentEighths(partner.starts as Alignment) * EIGHTH
      expect(Math.abs(beyond(start[start.standing].heading, said))).toBeLessThan(1e-9)
      expect(start.standing).toBe(figure.firstFoot)
    })
  })

  test('twice gives the figure again, but for the source of its steps, where no heel turn was dropped', () => {
    let compared = 0
    everyFigure(inAnyPosition, (figure, partner) => {
      if (hasHeelTurn(figure)) return
      compared += 1
      expect({ ...naturalOpposite(partner), stepsSource: null }).toEqual({ ...figure, stepsSource: null })
    })
    expect(compared).toBeGreaterThan(500)
  })
})

/** The course and the charts of the trade. */
const files = {
  ...(await readSources('figures-demo', /\.figure\.yaml$/)),
  ...(await readSources('tests/tables/basics', /\.figure\.yaml$/)),
}

describe('naturalOpposite(figure), written as a file', () => {
  test.each(Object.entries(files))('is read back without a remark: %s', (file, text) => {
    const result = parseFigure(text, file)
    if (!result.ok) throw new Error(JSON.stringify(result.problems))
    const partner = naturalOpposite(result.figure)
    const again = parseFigure(writeFigure(partner), file)
    expect(again).toMatchObject({ ok: true, warnings: result.warnings })
    expect(again.ok && again.figure).toEqual(partner)
  })
})
