import { type Beat, beat, type Seconds, seconds } from '../units.ts'

/**
 * Which beat it is. Anchored: at `anchor.now` it was `anchor.beat`; everything else follows from how long ago that was,
 * so that a slow frame, a stall or another frame rate changes nothing. Every change takes the beat first, then anchors anew.
 */
export type Clock = {
  readonly playing: boolean
  /** Its beat may lie before the range where it is counted in: the dancers stand until the range begins. */
  readonly anchor: { readonly beat: Beat; readonly now: Seconds }
  readonly secondsPerBeat: Seconds
  /** The beats that can be shown. */
  readonly range: Range
  /** The length of a round in beats; null: it stops at the end of the range. */
  readonly round: Beat | null
  /** What holds until the anchor, where that is still to come: what sounds already cannot be changed any more. */
  readonly former?: Clock | undefined
}

/** from ≤ to, both ends included. */
export type Range = { readonly from: Beat; readonly to: Beat }

const clamp = (value: number, { from, to }: Range): Beat => beat(Math.min(to, Math.max(from, value)))

/** A clock that stands at the start of the range. */
export function standingClock(range: Range, secondsPerBeat: Seconds, round: Beat | null, now: Seconds): Clock {
  return { playing: false, anchor: { beat: range.from, now }, secondsPerBeat, range, round }
}

/** The clock that holds at `now`: itself, or what it is until its anchor. */
export function clockThen(clock: Clock, now: Seconds): Clock {
  return clock.former !== undefined && now < clock.anchor.now ? clockThen(clock.former, now) : clock
}

/**
 * The beat at `now`. In a round the end is the start again; otherwise it is held at the end of the range. Before the range
 * only while it is counted in.
 */
export function beatAt(changing: Clock, now: Seconds): Beat {
  const { anchor, playing, range, round, secondsPerBeat } = clockThen(changing, now)
  if (!playing) return clamp(anchor.beat, range)
  const run = anchor.beat + Math.max(0, now - anchor.now) / secondsPerBeat
  if (run < range.from) return beat(run)
  if (round === null) return clamp(run, range)
  const into = (run - range.from) % round
  return beat(range.from + (into < 0 ? into + round : into))
}

/** True when a clock without a round has come to the end of its range. */
export const isOver = (clock: Clock, now: Seconds): boolean =>
  clock.round === null && beatAt(clock, now) >= clock.range.to

const anchored = (clock: Clock, now: Seconds, change: Partial<Clock>, at: number = beatAt(clock, now)): Clock => {
  const changed = { ...clock, ...change }
  // Counting in goes on, unless something else is to be danced after it.
  const countsIn = at < clock.range.from && changed.playing && changed.range.from === clock.range.from
  return { ...changed, anchor: { beat: countsIn ? beat(at) : clamp(at, changed.range), now }, former: undefined }
}

/** Seconds after which nobody asks what was. */
const PAST = 1

/** Without what nobody asks for any more: a tempo that is dragged changes over and over. */
const recent = (clock: Clock, when: Seconds): Clock => {
  if (clock.former === undefined) return clock
  return { ...clock, former: when - clock.anchor.now > PAST ? undefined : recent(clock.former, when) }
}

/** The same change from `when` on, which may still be to come; until then all goes on as it did. */
const from = (clock: Clock, when: Seconds, change: Partial<Clock>): Clock => ({
  ...anchored(clock, when, change),
  former: recent(clock, when),
})

/** At another beat from `when` on, now or soon (held inside the range); until then all goes on as it did. */
export const leaptTo = (clock: Clock, at: Beat, when: Seconds): Clock => ({
  ...anchored(clock, when, {}, clamp(at, clock.range)),
  former: recent(clock, when),
})

/**
 * Plays from before its range on, from `when` on, now or later: it is counted in.
 * @param at no later than the range's start
 * @param now where `when` is not soon: what was before now is asked for no more
 */
export function countedIn(clock: Clock, at: Beat, when: Seconds, now: Seconds = when): Clock {
  const former = clock.playing ? recent(clock, now) : undefined
  return { ...clock, playing: true, anchor: { beat: beat(Math.min(at, clock.range.from)), now: when }, former }
}

/** What has not begun yet begins later. */
export const putOff = (clock: Clock, to: Seconds): Clock => ({
  ...clock,
  anchor: { ...clock.anchor, now: seconds(Math.max(clock.anchor.now, to)) },
})

/** When the round that is danced at `now` ends, in a clock that plays in rounds; `now` in any other. */
export function roundEnds(changing: Clock, now: Seconds): Seconds {
  const clock = clockThen(changing, now)
  if (!clock.playing || clock.round === null) return now
  const left = clock.range.from + clock.round - beatAt(clock, now)
  return seconds(now + left * clock.secondsPerBeat)
}

/** Goes on from where it stands; from the start when it stands at the end. */
export function playing(clock: Clock, now: Seconds): Clock {
  const at = beatAt(clock, now)
  return anchored(clock, now, { playing: true }, at >= clock.range.to ? clock.range.from : at)
}

export const paused = (clock: Clock, now: Seconds): Clock => anchored(clock, now, { playing: false })

/** At another beat (held inside the range); goes on playing if it played. */
export const soughtTo = (clock: Clock, at: Beat, now: Seconds): Clock =>
  anchored(clock, now, {}, clamp(at, clock.range))

/** At another tempo from `when` on, now or soon; the beat then stays the beat then. */
export const atTempo = (clock: Clock, secondsPerBeat: Seconds, when: Seconds): Clock =>
  from(clock, when, { secondsPerBeat })

/** The same clock where every beat has another number. */
const renumbered = (clock: Clock, by: number): Clock => ({
  ...clock,
  anchor: { ...clock.anchor, beat: beat(clock.anchor.beat + by) },
  range: { from: beat(clock.range.from + by), to: beat(clock.range.to + by) },
  former: clock.former === undefined ? undefined : renumbered(clock.former, by),
})

/**
 * With another range or round from `when` on, now or soon; the beat is kept where the range allows it.
 * @param by beats by which it is another one in the new range, and from now on
 */
export const within = (changing: Clock, range: Range, round: Beat | null, when: Seconds, by = 0): Clock => {
  const clock = by === 0 ? changing : renumbered(changing, by)
  return { ...anchored(clock, when, { range, round }), former: recent(clock, when) }
}
