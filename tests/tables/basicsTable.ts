/** What a chart says of a figure of `basics/`, typed from the chart and not computed. */
export type Basic = {
  /** Where the feet point at the start, in eighths of a turn to the right of the line of dance (wall 2, centre −2). */
  readonly starts: number
  /** Where the placed foot points after each step, likewise. */
  readonly points: string
  /** The way that the weight goes on each step, in degrees to the right of the line of dance. */
  readonly goes: string
  /** All turns of the figure, in eighths; to the right is positive. */
  readonly turn: number
  /** Where the feet point at the end, in eighths. */
  readonly ends: number
}

/**
 * Seventeen basics of the ten dances, leader and follower. Sources: R parts in the files' own `steps source`; the rest,
 * most followers among it, is from memory of the handbooks and for a teacher to check.
 *
 * How charts' words were read: facing and pointing a direction is the feet's heading, backing it is half a turn more
 * ("body less" says something of the body only, and is in the files' `body turn`). Sideways and diagonal steps go by their
 * own position (side 90 from the toes, slightly forward 70, slightly back 110, diagonally 45 or 135), a close goes to
 * the other foot. A figure that no chart ties to the room starts at 0.
 */
export const basicsTable: Readonly<Record<string, Basic>> = {
  // The chart has the right foot; the left is its mirror, towards the wall.
  'waltz-right-closed-change-leader': { starts: -1, points: '-1 -1 -1', goes: '-45 -115 45', turn: 0, ends: -1 },
  'waltz-right-closed-change-follower': { starts: 3, points: '3 3 3', goes: '-45 -115 45', turn: 0, ends: 3 },
  'waltz-left-closed-change-leader': { starts: 1, points: '1 1 1', goes: '45 115 -45', turn: 0, ends: 1 },
  'waltz-left-closed-change-follower': { starts: -3, points: '-3 -3 -3', goes: '45 115 -45', turn: 0, ends: -3 },
  // The turn before a step does not bend the way: the leader's 2 goes on where 1 went.
  'waltz-natural-turn-leader': {
    starts: 1,
    points: '1 3 4 4 -1 -1',
    goes: '45 45 -90 0 45 -135',
    turn: 6,
    ends: -1,
  },
  'waltz-natural-turn-follower': {
    starts: -3,
    points: '-3 0 0 0 2 3',
    goes: '45 90 -90 0 0 -135',
    turn: 6,
    ends: 3,
  },
  'waltz-reverse-turn-leader': {
    starts: -1,
    points: '-1 -3 4 4 1 1',
    goes: '-45 -45 90 0 -45 135',
    turn: -6,
    ends: 1,
  },
  'waltz-reverse-turn-follower': {
    starts: 3,
    points: '3 0 0 0 -2 -3',
    goes: '-45 -90 90 0 0 135',
    turn: -6,
    ends: -3,
  },
  // "Crosses behind" is behind the other foot and over to its far side.
  'waltz-whisk-leader': { starts: 1, points: '1 1 1', goes: '45 115 -155', turn: 0, ends: 1 },
  'waltz-whisk-follower': { starts: -3, points: '-3 -1 -1', goes: '45 180 155', turn: 2, ends: -1 },
  // In promenade the couple goes along the line of dance, an eighth off where the feet point; ours goes where they point.
  'waltz-chasse-from-promenade-leader': {
    starts: 1,
    points: '1 1 1 1',
    goes: '0 -25 135 -25',
    turn: 0,
    ends: 1,
  },
  'waltz-chasse-from-promenade-follower': {
    starts: -1,
    points: '-1 -2 -3 -3',
    goes: '0 0 135 -25',
    turn: -2,
    ends: -3,
  },
  // The outside of a turn makes it in two parts, the inside in one.
  'quickstep-quarter-turn-right-leader': { starts: 1, points: '1 2 3 3', goes: '45 0 -135 25', turn: 2, ends: 3 },
  'quickstep-quarter-turn-right-follower': {
    starts: -3,
    points: '-3 -1 -1 -1',
    goes: '45 45 -135 0',
    turn: 2,
    ends: -1,
  },
  'quickstep-progressive-chasse-leader': { starts: 3, points: '3 1 1 1', goes: '-45 -45 135 -25', turn: -2, ends: 1 },
  'quickstep-progressive-chasse-follower': {
    starts: -1,
    points: '-1 -2 -3 -3',
    goes: '-45 0 135 -25',
    turn: -2,
    ends: -3,
  },
  'foxtrot-feather-step-leader': { starts: -1, points: '-1 -1 -1', goes: '-45 -45 -45', turn: 0, ends: -1 },
  'foxtrot-feather-step-follower': { starts: 3, points: '3 3 3', goes: '-45 -45 -45', turn: 0, ends: 3 },
  'foxtrot-three-step-leader': { starts: 0, points: '0 0 0', goes: '0 0 0', turn: 0, ends: 0 },
  'foxtrot-three-step-follower': { starts: 0, points: '0 0 0', goes: '180 180 180', turn: 0, ends: 0 },
  'foxtrot-reverse-turn-leader': {
    starts: -1,
    points: '-1 -3 4 4 1 1',
    goes: '-45 -45 0 0 -25 45',
    turn: -6,
    ends: 1,
  },
  // The heel turn is the standing foot's; the weight goes to the foot that has closed on its left.
  'foxtrot-reverse-turn-follower': {
    starts: 3,
    points: '3 0 0 0 -2 -3',
    goes: '-45 -90 0 0 20 45',
    turn: -6,
    ends: -3,
  },
  // "The path curves to the left" by no amount that is named: not turned here. The leader's quarter is the body's.
  'tango-walks-and-link-leader': { starts: 0, points: '0 0 0 0', goes: '0 0 0 110', turn: 0, ends: 0 },
  'tango-walks-and-link-follower': { starts: 0, points: '0 0 0 2', goes: '180 180 180 -20', turn: 2, ends: 2 },
  // By the position's words alone, for no alignments are charted. The follower turns back the quarter of the link.
  'tango-closed-promenade-leader': { starts: 0, points: '0 0 0 0', goes: '-45 -45 -70 125', turn: 0, ends: 0 },
  'tango-closed-promenade-follower': { starts: 0, points: '0 0 -2 -2', goes: '45 45 20 -145', turn: -2, ends: -2 },
  // About half a turn in each bar: taken as two quarters.
  'viennese-waltz-natural-turn-leader': {
    starts: 0,
    points: '0 2 4 4 -2 0',
    goes: '0 0 -90 20 0 -90',
    turn: 8,
    ends: 0,
  },
  'viennese-waltz-natural-turn-follower': {
    starts: 4,
    points: '4 -2 0 0 2 4',
    goes: '20 0 -90 0 0 -90',
    turn: 8,
    ends: 4,
  },
  // "Up to an eighth in each half": a whole one, with the side step.
  'rumba-basic-leader': { starts: 0, points: '0 0 -1 -1 -1 -2', goes: '0 180 -155 135 -45 -20', turn: -2, ends: -2 },
  'rumba-basic-follower': { starts: 0, points: '0 0 -1 -1 -1 -2', goes: '180 0 25 -45 135 160', turn: -2, ends: -2 },
  'cha-cha-basic-leader': {
    starts: 0,
    points: '0 0 0 0 0 0 0 0 0 0',
    goes: '0 180 -90 90 -90 180 0 90 -90 90',
    turn: 0,
    ends: 0,
  },
  'cha-cha-basic-follower': {
    starts: 0,
    points: '0 0 0 0 0 0 0 0 0 0',
    goes: '180 0 90 -90 90 0 180 -90 90 -90',
    turn: 0,
    ends: 0,
  },
  // "Up to a quarter": all of it, an eighth on each 1.
  'samba-natural-basic-leader': { starts: 0, points: '1 1 1 2 2 2', goes: '45 -45 135 -90 180 0', turn: 2, ends: 2 },
  'samba-natural-basic-follower': { starts: 0, points: '1 1 1 2 2 2', goes: '-135 135 -45 90 0 180', turn: 2, ends: 2 },
  'jive-fallaway-rock-leader': {
    starts: 0,
    points: '0 0 0 0 0 0 0 0',
    goes: '180 0 -90 90 -90 90 -90 90',
    turn: 0,
    ends: 0,
  },
  'jive-fallaway-rock-follower': {
    starts: 0,
    points: '0 0 0 0 0 0 0 0',
    goes: '180 0 90 -90 90 -90 90 -90',
    turn: 0,
    ends: 0,
  },
}
