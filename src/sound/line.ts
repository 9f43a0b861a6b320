import { modulo } from '../clock/modulo.ts'
import type { Score } from './scoreOf.ts'

/** A score from a moment on, as it was asked for. */
export type Line<Buffer> = {
  readonly score: Score<Buffer>
  /** Beats that are counted in before its first round; 0: none. */
  readonly countsIn: number
  /** The sound's time from which it is heard, in seconds. */
  readonly when: number
  /** How far into the round it is then, in seconds; below 0: so long before its start. */
  readonly into: number
}

/** Something of a line that is to be asked for. */
export type Piece = {
  /** Of the score. */
  readonly index: number
  /** Seconds of the sound's. */
  readonly begins: number
  readonly ends: number
  /** The score's only part, over and over: nothing comes after it. */
  readonly loops: boolean
}

/** A click that goes on so near to where it was is heard as one; in seconds. */
const ONE = 0.005
/** More than this between what sounds and what is shown is mended, in seconds. */
const OFF = 0.001

/** How far into its round a line is at a time of the sound's, in seconds; below 0: before its first. */
function intoLine({ score, into, when }: Line<unknown>, now: number): number {
  const run = into + now - when
  return run < 0 ? run : modulo(run, score.lasts)
}

/** Whether a line sounds as it should: this score, and so far into it at a time of the sound's. */
export function isRight<Buffer>(line: Line<Buffer> | null, score: Score<Buffer>, now: number, into: number): boolean {
  if (line === null || line.score !== score) return false
  const sounds = intoLine(line, now)
  const off = Math.abs(sounds - into)
  // Round the end it is near as well, unless nobody has begun yet.
  const round = sounds < -OFF || into < -OFF ? off : Math.min(off, score.lasts - off)
  return round <= OFF
}

/** Seconds since the last click began in a score; so far into it. */
function sinceClick(score: Score<unknown>, countsIn: number, into: number): number {
  if (into >= 0) return Math.min(...score.clicks.map((click) => modulo(into - click, score.lasts)))
  if (countsIn === 0) return Number.POSITIVE_INFINITY
  const before = score.countIn(countsIn).clicks.filter((click) => click <= into + 1e-9)
  return Math.min(...before.map((click) => Math.max(0, into - click)))
}

/**
 * How long a line must be quiet at its beginning, in seconds: half a click is heard only as the other half of one.
 * @param before what sounds until then
 * @param click what a click lasts
 */
export function quietOf(line: Line<unknown>, before: Line<unknown> | null, click: number): number {
  const since = sinceClick(line.score, line.countsIn, line.into)
  const heard =
    before === null ? Number.POSITIVE_INFINITY : sinceClick(before.score, before.countsIn, intoLine(before, line.when))
  return since <= ONE || Math.abs(heard - since) <= ONE ? 0 : Math.max(0, click - since)
}

/** The part of a score that sounds so far into a round, 0 or more. */
export function indexAt({ parts, startOf }: Score<unknown>, into: number): number {
  let index = 0
  while (index + 1 < parts && startOf(index + 1) <= into) index++
  return index
}

/** The `n`-th piece of a line, counted from the start of its round; null: there is none. */
export function pieceOf({ score, when, into }: Line<unknown>, n: number): Piece | null {
  const { parts, repeats, lasts, startOf } = score
  const rounds = Math.floor(n / parts)
  const index = n % parts
  const loops = parts === 1 && repeats
  if (rounds > 0 && (loops || !repeats)) return null
  const base = when - into + rounds * lasts
  return { index, loops, begins: base + startOf(index), ends: base + (index + 1 < parts ? startOf(index + 1) : lasts) }
}
