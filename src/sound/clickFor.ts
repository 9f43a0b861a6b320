import type { Tick } from './tick.ts'

/** Which clicks are wanted. */
export type ClickChoices = {
  /** The first of a bar stands out; otherwise it is a beat like the others. */
  readonly bar: boolean
  readonly beats: boolean
  /** Halves, and the calls that lie on neither a beat nor a half. */
  readonly halves: boolean
}

/** The click at a place in the music. @param count 1 … beats per bar @param onBeat otherwise it lies between two beats */
export function clickFor(count: number, onBeat: boolean, { bar, beats, halves }: ClickChoices): Tick['click'] {
  if (!onBeat) return halves ? 'half' : null
  if (count === 1 && bar) return 'bar'
  return beats ? 'beat' : null
}
