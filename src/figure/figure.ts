import type { Convention, DanceId, Source } from '../dance/dance.ts'
import type { BeatValue, Metres, Radians, Share } from '../units.ts'

export type Foot = 'left' | 'right'
export type Role = 'leader' | 'follower'

/** Where a foot stands at the end of an action, in relation to the other foot and the facing after the turn. */
export type Direction =
  | 'forward'
  | 'back'
  | 'side'
  | 'slightly forward'
  | 'slightly back'
  | 'slightly side'
  | 'diagonally forward'
  | 'diagonally back'
  | 'side and slightly forward'
  | 'side and slightly back'
  | 'forward and slightly side'
  | 'back and slightly side'
  | 'close'
  | 'close slightly forward'
  | 'close slightly back'
  | 'half close'
  | 'cross in front'
  | 'cross behind'
  | 'lock in front'
  | 'lock behind'
  | 'in place'
  | 'tap'
  | 'brush'
  | 'point'
  | 'hold'

/** Moments that a teacher has set, in beats from the action's own count; absent = the convention's. */
export type OwnMoments = {
  readonly leaves?: BeatValue
  readonly touches?: BeatValue
  readonly split?: BeatValue
  readonly full?: BeatValue
}

/**
 * A turn made on a foot that stands. pivot: on the foot that has just taken the weight, the free foot keeps its place in
 * relation to that leg; twist: every foot on the floor turns on its own spot; heel turn: the standing heel turns while
 * the other foot closes. On an action without weight the standing foot turns while the action lasts.
 */
export type TurnKind = 'pivot' | 'twist' | 'heel turn'

export type FootTurn = {
  readonly kind: TurnKind
  /** To the right is positive; never 0. */
  readonly by: Radians
}

/**
 * How a forward or back step lies to the line of the standing foot. in CBMP: on that line; across: over it (a step in
 * promenade).
 */
export type Placed = 'in CBMP' | 'across'

/** Where the partners are to each other on the step. Kept and said; the partner is not drawn. */
export type Position = 'closed' | 'promenade' | 'counter promenade' | 'fallaway' | 'outside partner'

export type Action = {
  readonly direction: Direction
  /** How far from the standing foot, along the direction; null = the usual size. */
  readonly size: Metres | null
  /** Made between the step before and this one by the moving foot; to the right is positive, 0 = none. */
  readonly turn: Radians
  readonly footTurn: FootTurn | null
  readonly placed: Placed | null
  readonly position: Position | null
  /** The side of the body that goes with the step (side leading); null = neither. */
  readonly leading: Foot | null
  /** Where the feet point at the end of the step, as charts say it; checked against the turns. */
  readonly alignment: Alignment | null
  /** The part of the foot on the floor, as charts say it ("HT", "inside edge of T"); '' = not said. */
  readonly footwork: string
  /** Plain text, '' for none. */
  readonly note: string
  /** The part of the weight that the foot takes: 1 a step, 0 a tap, brush, point or hold, between: part weight. */
  readonly weight: Share
  readonly moments: OwnMoments
}

/** One way to time the actions. */
export type Timing = {
  /** As the trade writes it: "S Q Q", "1 2 & 3". */
  readonly text: string
  /** The sign of each action: "S", "2", "&", "4-1". Same length as the figure's actions. */
  readonly signs: readonly string[]
  /** The beat value of each action. Same length. */
  readonly values: readonly BeatValue[]
  /**
   * The count of the bar on which the first action is called, 1-based. Not whole where the figure begins between two
   * counts: 0.5 is the & before 1.
   */
  readonly firstCount: number
  readonly source: Source
}

/** A direction of the room: the line of dance runs anticlockwise round it; the wall is on the right of one who faces along it. */
export type RoomDirection =
  | 'line of dance'
  | 'diagonally to wall'
  | 'wall'
  | 'diagonally to wall against line of dance'
  | 'against line of dance'
  | 'diagonally to centre against line of dance'
  | 'centre'
  | 'diagonally to centre'

/** pointing: the feet, where the body points less far (the same as facing for the feet). */
export type Alignment = { readonly way: 'facing' | 'backing' | 'pointing'; readonly to: RoomDirection }

/** What a track has reached at a time. */
export type Checkpoint = {
  /** In beats from the first action's count, under the figure's first timing. */
  readonly at: BeatValue
  readonly value: number
}

/** What goes on above the feet: kept and checked, read at a progress (`pose/track.ts`). Each in the order of time. */
export type Tracks = {
  /** Turn of the body since the start, radians; to the right is positive. */
  readonly bodyTurn: readonly Checkpoint[]
  /** 0 = down, 1 = up. */
  readonly rise: readonly Checkpoint[]
  /** −1 = to the left, 1 = to the right, 0 = none. */
  readonly sway: readonly Checkpoint[]
}

export type Figure = {
  /** Stable name: the file's name without `.figure.yaml`. */
  readonly id: string
  readonly title: string
  readonly dance: DanceId
  readonly role: Role
  readonly firstFoot: Foot
  /** null: the figure is not tied to the room. */
  readonly starts: Alignment | null
  /** Where the feet point at the end, as charts say it; checked against the turns. */
  readonly ends: Alignment | null
  /** Where the first foot stands at the start, from the foot that has the weight; null = closed. */
  readonly freeFoot: Direction | null
  readonly convention: Convention
  /** At least one; the first is the one shown first. */
  readonly timings: readonly [Timing, ...Timing[]]
  readonly actions: readonly Action[]
  /** Where the steps come from; null = not said. */
  readonly stepsSource: Source | null
  readonly tracks: Tracks
  /** A teacher's remark; plain text, '' for none. */
  readonly about: string
}
