import { type Beat, beat, type Seconds, seconds } from '../units.ts'
import { atTempo, beatAt, type Clock, countedIn, leaptTo } from './clock.ts'
import { modulo } from './modulo.ts'

/** How a round lies against music. */
export type MusicFit = {
  /** When a bar of the music begins, in the driver's time: any of its bars. */
  readonly one: Seconds
  /** A beat of the figure that falls on the first count of a bar. */
  readonly at: number
  readonly beatsPerBar: number
  /** Whole multiples of so many beats fit as well: a bar, where rounds are whole bars; else a beat. */
  readonly every: number
}

/** Less than this is neither seen nor heard, in seconds: as much as the sound is mended from on. */
const UNSEEN = 0.001
/** Up to this part of a beat it is mended by and by; more is a jump. Own judgement. */
const LITTLE = 1 / 8
/** Beats in which it is mended: the tempo is then off by 3 % at the most. Own judgement. */
const GLIDE = 4

/** The figure's beat by the music, give or take bars. */
const beatOf = ({ one, at }: MusicFit, { secondsPerBeat }: Clock, when: Seconds): number =>
  at + (when - one) / secondsPerBeat

/** Beats by which the picture is behind the music at `when`; ahead of it is negative, half of `every` the most. */
export function behindMusic(clock: Clock, fit: MusicFit, when: Seconds): number {
  const half = fit.every / 2
  return modulo(beatOf(fit, clock, when) - beatAt(clock, when) + half, fit.every) - half
}

/**
 * A clock that plays, put right by music from `when` on, now or soon. A little is mended over some beats, so that nothing
 * jumps; more at once, to the nearest beat that fits.
 */
export function withMusic(clock: Clock, fit: MusicFit, when: Seconds): Clock {
  const { secondsPerBeat, range, round } = clock
  const behind = behindMusic(clock, fit, when)
  if (Math.abs(behind) * secondsPerBeat < UNSEEN) return clock
  if (Math.abs(behind) <= LITTLE) {
    const quicker = atTempo(clock, seconds((secondsPerBeat * GLIDE) / (GLIDE + behind)), when)
    // All that was before holds until then, however long it takes.
    return { ...atTempo(quicker, secondsPerBeat, seconds(when + GLIDE * secondsPerBeat)), former: quicker }
  }
  const to = beatAt(clock, when) + behind
  // Counting in goes on, at another beat.
  if (beatAt(clock, when) < range.from) return countedIn(clock, beat(to < range.from ? to : to - fit.every), when)
  if (round !== null) return leaptTo(clock, beat(range.from + modulo(to - range.from, round)), when)
  // Danced once it has not begun before its start.
  return leaptTo(clock, beat(to < range.from ? to + fit.every : to), when)
}

/**
 * Where it begins at `when`, so that it comes to its start as the music does.
 * @param least beats before the start, no fewer
 */
export function beforeStart(clock: Clock, fit: MusicFit, least: number, when: Seconds): Beat {
  const latest = clock.range.from - least
  return beat(latest - modulo(latest - beatOf(fit, clock, when), fit.beatsPerBar))
}
