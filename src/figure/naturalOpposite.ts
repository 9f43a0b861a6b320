import type { Source } from '../dance/dance.ts'
import { radians } from '../units.ts'
import { addTurns } from './addTurns.ts'
import { alignmentEighths, roomEighths } from './alignmentEighths.ts'
import type { Action, Alignment, Checkpoint, Direction, Figure, Foot, Position, Role, RoomDirection } from './figure.ts'

/** Where the other foot of one who faces goes: ahead and behind change, what is beside stays. */
const opposites: Readonly<Record<Direction, Direction>> = {
  forward: 'back',
  back: 'forward',
  side: 'side',
  'slightly forward': 'slightly back',
  'slightly back': 'slightly forward',
  'slightly side': 'slightly side',
  'diagonally forward': 'diagonally back',
  'diagonally back': 'diagonally forward',
  'side and slightly forward': 'side and slightly back',
  'side and slightly back': 'side and slightly forward',
  'forward and slightly side': 'back and slightly side',
  'back and slightly side': 'forward and slightly side',
  close: 'close',
  'close slightly forward': 'close slightly back',
  'close slightly back': 'close slightly forward',
  'half close': 'half close',
  'cross in front': 'cross behind',
  'cross behind': 'cross in front',
  'lock in front': 'lock behind',
  'lock behind': 'lock in front',
  'in place': 'in place',
  tap: 'tap',
  brush: 'brush',
  point: 'point',
  hold: 'hold',
}

/**
 * How far the follower is turned from facing the leader, in eighths to the right. Half of the V is each partner's, so
 * that both go on between their facings (`pose/footPosition.ts`): a quarter in all (from memory; so in the whisk's and
 * the link's charts, where the follower alone turns it).
 */
const opened: Readonly<Record<Position, number>> = {
  closed: 0,
  promenade: 2,
  'counter promenade': -2,
  fallaway: 2,
  'outside partner': 0,
}

const otherRole: Readonly<Record<Role, Role>> = { leader: 'follower', follower: 'leader' }
const otherFoot: Readonly<Record<Foot, Foot>> = { left: 'right', right: 'left' }
const otherWay: Readonly<Record<Alignment['way'], Alignment['way']>> = {
  facing: 'backing',
  backing: 'facing',
  pointing: 'pointing',
}

/** The eighths of an opening as the partner of one in this role has them: the leader closes what the follower opens. */
const ofPartner = (eighths: number, role: Role): number => (role === 'leader' ? eighths : 0 - eighths)

/** In eighths from the start (before the first action) to the end. */
function openings({ actions }: Figure): readonly number[] {
  let now = opened[actions[0]?.position ?? 'closed']
  const after = actions.map(({ position, weight }) => {
    if (position !== null || weight > 0) now = opened[position ?? 'closed']
    return now
  })
  return [after[0] ?? now, ...after]
}

const turnedRoom = (eighths: number): RoomDirection =>
  (Object.keys(roomEighths) as RoomDirection[]).find((to) => (roomEighths[to] - eighths) % 8 === 0) as RoomDirection

/** @param by what the partner's heading is beside half a turn, in eighths to the right */
function alignmentOf(said: Alignment | null, by: number): Alignment | null {
  if (said === null) return null
  const way = by === 0 ? otherWay[said.way] : said.way
  return { way, to: turnedRoom(alignmentEighths(said) + 4 + by - (way === 'backing' ? 4 : 0)) }
}

const directionOf = (direction: Direction, opening: number): Direction =>
  opening === 0 ? opposites[direction] : direction

function actionOf(action: Action, before: number, opening: number, role: Role): Action {
  const { footTurn, leading } = action
  const isHeelTurn = footTurn?.kind === 'heel turn'
  const opens = radians((ofPartner(opening - before, role) * Math.PI) / 4)
  const turn = addTurns(action.turn, opens)
  return {
    ...action,
    direction: directionOf(action.direction, opening),
    turn: isHeelTurn ? addTurns(turn, footTurn.by) : turn,
    footTurn: isHeelTurn ? null : footTurn,
    leading: leading === null ? null : otherFoot[leading],
    alignment: alignmentOf(action.alignment, ofPartner(opening, role)),
    footwork: '',
    note: '',
  }
}

// 0 − 0 is 0, −0 is another number.
const mirrored = (track: readonly Checkpoint[]): readonly Checkpoint[] =>
  track.map(({ at, value }) => ({ at, value: 0 - value }))

const sourceOf = (role: Role): Source => ({
  provenance: 'own judgement',
  text: `made from the ${role}’s steps by the rule of the natural opposite`,
})

/**
 * The other partner's part of a figure, by the trade's rule of the natural opposite (common practice; from memory): the
 * other foot, forward for back, behind for in front, all else as it is. A chart may differ, and does where a turn is
 * split unlike between the inside and the outside, or one partner turns on a heel.
 *
 * Face to face or with one outside, the couple turns as one: every turn is the same for both, and the partner's heading
 * is half a turn from the dancer's at every rest. A heel turn is one partner's own; the other, who goes round it, makes
 * it between the steps.
 *
 * In promenade, counter promenade and fallaway the two stand in a V and go the same way: the direction is kept. Forward
 * is forward for both and back is back, both step to the open side (`side`), both step over (`across`), both cross
 * behind. The follower is then turned a quarter from facing the leader (to the right; in counter promenade to the
 * left): the turn into the position and out of it is the follower's, and alignments say it (both facing, both backing).
 * The figure begins in the position of its first action; a step that says none is danced closed, an action without
 * weight that says none stays in the one before.
 *
 * Footwork, notes and `about` are the one partner's own and are dropped; so is the body's turn where the figure opens or
 * closes such a V. Moments, timings, weights, sizes, rise and what names the figure stay. Twice gives the figure again
 * but for what was dropped, heel turns, and the source of the steps, which says that they were made by rule.
 */
export function naturalOpposite(figure: Figure): Figure {
  const { role, firstFoot, starts, ends, freeFoot, actions, tracks } = figure
  const opening = openings(figure)
  const [first, last] = [opening[0] as number, opening.at(-1) as number]
  return {
    ...figure,
    role: otherRole[role],
    firstFoot: otherFoot[firstFoot],
    starts: alignmentOf(starts, ofPartner(first, role)),
    ends: alignmentOf(ends, ofPartner(last, role)),
    freeFoot: freeFoot === null ? null : directionOf(freeFoot, first),
    actions: actions.map((action, index) =>
      actionOf(action, opening[index] as number, opening[index + 1] as number, role),
    ),
    stepsSource: sourceOf(role),
    tracks: {
      bodyTurn: opening.every((one) => one === first) ? tracks.bodyTurn : [],
      rise: tracks.rise,
      sway: mirrored(tracks.sway),
    },
    about: '',
  }
}
