import type { Beat, Share } from '../units.ts'

/** Which actions a fault is made on, by index; left out: on all where it can be. */
type On = { readonly on?: readonly number[] }
type ByBeats = { readonly by: Beat } & On
type InPart = { readonly part: Share } & On

/**
 * Which way of dancing a figure to show. Plain data, so that it can be kept and sent. What each is: see its rule.
 *
 * - late: each action begins `by` beats after its plan, at its own pace. hurrying: so as to be over in time all the same.
 * - early: too soon onto the foot: across in the first `part` of the step's time, then waits.
 * - ahead: all of it `by` beats before its time. gaining: every action takes `by` beats less than its time.
 * - foot first: the foot is put down without the body, which waits `by` beats.
 * - placed: in a run of half-beat steps the first is placed, not carried.
 * - cut short: slows as short as the quicks. misplaced: the split beat comes in the wrong place. evened: it is shared out.
 * - no change: closes without changing weight.
 * - stops: stops in the middle, then hurries. part weight: never fully over: takes the `part`.
 * - slip: one action (the first in `on`) begins `by` beats late, and the dancer makes up for it as soon as he can.
 * - swelling, arrested: no faults: other dynamics between the same moments.
 */
export type Way =
  | { readonly kind: 'in time' }
  | ({ readonly kind: 'late' } & ByBeats)
  | ({ readonly kind: 'hurrying' } & ByBeats)
  | ({ readonly kind: 'early' } & InPart)
  | { readonly kind: 'ahead'; readonly by: Beat }
  | { readonly kind: 'gaining'; readonly by: Beat }
  | ({ readonly kind: 'foot first' } & ByBeats)
  | { readonly kind: 'placed' }
  | ({ readonly kind: 'cut short' } & On)
  | { readonly kind: 'misplaced' }
  | { readonly kind: 'evened' }
  | ({ readonly kind: 'no change' } & On)
  | ({ readonly kind: 'stops' } & On)
  | ({ readonly kind: 'part weight' } & InPart)
  | ({ readonly kind: 'slip' } & ByBeats)
  | { readonly kind: 'swelling' }
  | { readonly kind: 'arrested' }

export type WayKind = Way['kind']

/** Whether a way is danced on an action: all of them, unless some are chosen. */
export const isOn = (way: Way, index: number): boolean =>
  !('on' in way) || way.on === undefined || way.on.includes(index)
