import fc from 'fast-check'
import { roomEighths } from '../../src/figure/alignmentEighths.ts'
import { checkAlignments } from '../../src/figure/checkAlignments.ts'
import type { Alignment, Figure, Foot, Position, RoomDirection } from '../../src/figure/figure.ts'
import { beatValue } from '../../src/units.ts'

const ROOM = Object.keys(roomEighths) as readonly RoomDirection[]

/**
 * A generated figure with what `generatedFigure` leaves out: a role, a start in the room, and on its actions these
 * positions, leading sides and alignments, of which most are what start and turns lead to and some are not; a sway.
 * @param figure its turns are eighths
 */
export function generatedInRoom(figure: Figure, positions: readonly Position[]): fc.Arbitrary<Figure> {
  const way = fc.constantFrom<Alignment['way']>('facing', 'backing', 'pointing')
  const alignment = fc.record({ way, to: fc.constantFrom(...ROOM) })
  const more = fc.record({
    position: fc.option(fc.constantFrom(...positions), { freq: 3 }),
    leading: fc.option(fc.constantFrom<Foot>('left', 'right')),
    said: fc.option(alignment, { freq: 2 }),
    isRight: fc.integer({ min: 0, max: 9 }).map((one) => one > 0),
  })
  const n = figure.actions.length
  return fc
    .record({
      starts: alignment,
      ends: fc.option(alignment, { freq: 2 }),
      more: fc.array(more, { minLength: n, maxLength: n }),
      sway: fc.array(fc.constantFrom(-1, -0.5, 0, 0.5, 1), { maxLength: 3 }),
      role: fc.constantFrom('leader' as const, 'follower' as const),
    })
    .map((made): Figure => {
      const bare = figure.actions.map((action, index) => {
        const { position = null, leading = null } = made.more[index] ?? {}
        return { ...action, position, leading }
      })
      const actions = bare.map((action, index) => {
        const { said = null, isRight = false } = made.more[index] ?? {}
        if (said === null || !isRight) return { ...action, alignment: said }
        const saying = (to: RoomDirection) => ({ ...action, alignment: { way: said.way, to } })
        const fits = (to: RoomDirection) =>
          checkAlignments({ starts: made.starts, ends: null, actions: [...bare.slice(0, index), saying(to)] })
            .length === 0
        return saying(ROOM.find(fits) ?? said.to)
      })
      const sway = made.sway.map((value, index) => ({ at: beatValue(index), value }))
      const { role, starts, ends } = made
      return { ...figure, role, starts, ends, actions, tracks: { bodyTurn: [], rise: [], sway } }
    })
}
