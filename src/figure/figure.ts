import type { Convention, DanceId, Source } from '../dance/dance.ts'
import type { BeatValue, Metres, Radians, Share } from '../units.ts'

export type Foot = 'left' | 'right'
export type Role = 'leader' | 'follower'

/** Where a foot stands at the end of an action, in relation to the other foot and the facing after the turn. */
export type Direction =
  | 'forward'
  | 'back'
  | 'side'
  | 'diagonally forward'
  | 'diagonally back'
  | 'side and slightly forward'
  | 'side and slightly back'
  | 'forward and slightly side'
  | 'back and slightly side'
  | 'close'
  | 'cross in front'
  | 'cross behind'
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

export type Action = {
  readonly direction: Direction
  /** How far from the standing foot, along the direction; null = the usual size. */
  readonly size: Metres | null
  /** Made with this action by the moving foot; to the right is positive, 0 = none. */
  readonly turn: Radians
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
  /** The count of the bar on which the first action is called, 1-based. */
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

export type Alignment = { readonly way: 'facing' | 'backing'; readonly to: RoomDirection }

export type Figure = {
  /** Stable name: the file's name without `.figure.yaml`. */
  readonly id: string
  readonly title: string
  readonly dance: DanceId
  readonly role: Role
  readonly firstFoot: Foot
  /** null: the figure is not tied to the room. */
  readonly starts: Alignment | null
  readonly convention: Convention
  /** At least one; the first is the one shown first. */
  readonly timings: readonly [Timing, ...Timing[]]
  readonly actions: readonly Action[]
  /** A teacher's remark; plain text, '' for none. */
  readonly about: string
}
