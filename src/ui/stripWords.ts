/** A point of the strip's grid with what is counted there. */
export type StripCount = {
  readonly beat: number
  readonly text: string
  /** Something is said aloud there. */
  readonly called: boolean
  /** On a whole beat of the music. */
  readonly onCount: boolean
  readonly barStart: boolean
  /** The music's bar, 1 = the first. */
  readonly bar: number
}

export type StripWord = Pick<StripCount, 'beat' | 'text' | 'called'>

export type StripWords = {
  /** What is written, from left to right. */
  readonly words: readonly StripWord[]
  /** How large, as a part of the size that words have where there is room. */
  readonly size: number
  /** The beats that have a line of the grid. */
  readonly lines: readonly number[]
}

/** Where there is room, in rem: what is called, and the rest. */
const CALLED = 1.125
const QUIET = 0.9375
/** Smaller than this part of it words are not read from afar: sooner some are left out. Own judgement. */
const LEAST = 0.74
/** Between two words, rem. */
const GAP = 0.1
/** Lines of beats nearer to one another than this, in rem, are a hatching. */
const FINE = 0.6

/** Widths in em, of wide faces (DejaVu Sans, bold), so that others have room. */
const WIDE = /[A-Z&]/
const letterWidth = (letter: string): number => (letter === '·' ? 0.4 : WIDE.test(letter) ? 0.88 : 0.71)
/** A word's ground reaches out at both sides, em. */
const PADDING = 0.3

/** How wide a word is at the most, in rem. @param size 1: as where there is room */
export function wordWidth({ text, called }: Pick<StripCount, 'text' | 'called'>, size: number): number {
  const letters = [...text].reduce((sum, letter) => sum + letterWidth(letter), PADDING)
  return letters * size * (called ? CALLED : QUIET)
}

/** How soon a word gives way: 0 = the last. */
function rank({ beat, called, onCount, barStart }: StripCount): number {
  if (barStart) return 0
  if (called) return onCount ? 1 : 2
  if (onCount) return 3
  return Number.isInteger(beat * 2) ? 4 : 5
}
const RANKS = [5, 4, 3, 2, 1] as const

/** The size at which no two touch. */
function sizeFor(words: readonly StripWord[], beatWidth: number): number {
  return words.slice(1).reduce((size, word, k) => {
    const before = words[k] as StripWord
    const room = (word.beat - before.beat) * beatWidth - GAP
    return Math.min(size, room / ((wordWidth(before, 1) + wordWidth(word, 1)) / 2))
  }, 1)
}

/**
 * What of the counts is written where beats are so wide: all of them, or those that say most. Whole kinds are left out,
 * so that what stands is even: half beats first, then beats that nothing is called on, then all but the bars. A strip of
 * bars has their numbers.
 * @param points from left to right
 * @param beatWidth rem, above 0
 */
export function stripWords(points: readonly StripCount[], beatWidth: number): StripWords {
  const linesWith = (words: readonly StripWord[]): number[] => {
    const named = new Set(words.map(({ beat }) => beat))
    return points
      .filter(({ beat, barStart, onCount }) => barStart || named.has(beat) || (onCount && beatWidth >= FINE))
      .map(({ beat }) => beat)
  }
  for (const most of RANKS) {
    const words = points.filter((point) => rank(point) <= most)
    const size = sizeFor(words, beatWidth)
    if (size >= LEAST) return { words, size, lines: linesWith(words) }
  }
  const bars = points.filter(({ barStart, bar }) => barStart && bar > 0)
  for (let every = 1; ; every *= 2) {
    const words = bars
      .filter(({ bar }) => (bar - 1) % every === 0)
      .map(({ beat, bar }) => ({ beat, text: String(bar), called: true }))
    const size = sizeFor(words, beatWidth)
    if (size >= LEAST || words.length < 2) return { words, size: Math.max(LEAST, size), lines: linesWith(words) }
  }
}
