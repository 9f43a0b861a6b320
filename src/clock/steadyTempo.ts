import { seconds } from '../units.ts'
import { type Taps, type TapTempo, tapTempo } from './tapTempo.ts'

/** A beat that was tapped some time ago, and how long a beat has been found to last since. */
export type SteadyBeat = {
  readonly at: number
  readonly secondsPerBeat: number
  /** How many taps that length is of. */
  readonly taps: number
}

/** Fewer taps are no beginning: what they say of the beat is too rough to count beats by later. */
const FEWEST_TAPS = 5
/** More are not looked at. */
const ENOUGH_TAPS = 9
/** Nearer than this, in beats, two places say less of the tempo than the taps themselves: as many as these are beats. */
const NEAREST = 8
/** The same music has its beats where they are expected, give or take this part of a beat. */
const OFF = 0.35
/** How far taps are off, in seconds, and of slow ones as a part of the beat; from memory (as in `tapTempo.ts`). */
const UNEVEN = 0.025
const UNEVEN_PART = 0.04
/** And the tempo that was found: beats as long, give or take four times the error of so many uneven taps, in seconds. */
const sameFor = (taps: number, secondsPerBeat: number): number =>
  4 * Math.max(UNEVEN, UNEVEN_PART * secondsPerBeat) * Math.sqrt(12 / (taps * (taps ** 2 - 1)))

/**
 * The tempo of music that goes on evenly: the last taps alone are off by some 0.6 % (nine taps, 25 ms each), a beat in a
 * minute and a half. The beats from an earlier tap to these are a longer measure. At another tempo it is other music:
 * then the taps alone say it. With beats elsewhere it is other music too, or was lost: it begins anew, at the tempo that is known.
 * @param before null: there is no earlier beat
 */
export function steadyTempo(
  before: SteadyBeat | null,
  taps: Taps,
): { readonly tempo: TapTempo; readonly steady: SteadyBeat | null } | null {
  const found = tapTempo(taps)
  if (found === null) return null
  const { times, nudge } = taps
  const one = found.one - (nudge / 2) * found.secondsPerBeat
  const middle = times.reduce((sum, at) => sum + at, 0) / times.length
  /** The beat next to the middle of the taps: no other is known as well. */
  const beats = Math.round((middle - one) / found.secondsPerBeat)
  const at = one + beats * found.secondsPerBeat
  const begun = (lasts: number, of: number): SteadyBeat | null =>
    of < FEWEST_TAPS ? null : { at, secondsPerBeat: lasts, taps: of }
  const count = times.length
  const isOther =
    before === null || Math.abs(found.secondsPerBeat - before.secondsPerBeat) > sameFor(count, before.secondsPerBeat)
  if (isOther) return { tempo: found, steady: begun(found.secondsPerBeat, count) }
  // Of few taps: what was found before says more.
  const [near, of] = count < before.taps ? [before.secondsPerBeat, before.taps] : [found.secondsPerBeat, count]
  const since = (at - before.at) / before.secondsPerBeat
  if (Math.abs(since - Math.round(since)) > OFF)
    return { tempo: tempoOf(at, beats, near, nudge), steady: count < FEWEST_TAPS ? null : begun(near, of) }
  if (since < NEAREST)
    return { tempo: tempoOf(at, beats, near, nudge), steady: { at: before.at, secondsPerBeat: near, taps: of } }
  const lasts = (at - before.at) / Math.round(since)
  return {
    tempo: tempoOf(at, beats, lasts, nudge),
    steady: { at: before.at, secondsPerBeat: lasts, taps: ENOUGH_TAPS },
  }
}

/** @param beats from the one to `at` */
const tempoOf = (at: number, beats: number, lasts: number, nudge: number): TapTempo => ({
  secondsPerBeat: seconds(lasts),
  beatsPerMinute: 60 / lasts,
  one: seconds(at - (beats - nudge / 2) * lasts),
})

/** The beat as it is danced: twice as quick as it was tapped (2), or half as quick (½). A nudge is by half of that beat. */
export function readAs({ secondsPerBeat, one }: TapTempo, times: number, nudge: number): TapTempo {
  const lasts = secondsPerBeat / times
  return {
    secondsPerBeat: seconds(lasts),
    beatsPerMinute: 60 / lasts,
    one: seconds(one + (nudge / 2) * (lasts - secondsPerBeat)),
  }
}
