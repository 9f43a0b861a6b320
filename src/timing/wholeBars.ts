const ROUNDING = 1e-9

/** Whether so many beats are whole bars: rounds of that length keep a 1 a 1 in the music. */
export function isWholeBars(beats: number, { beatsPerBar }: { readonly beatsPerBar: number }): boolean {
  const bars = beats / beatsPerBar
  return Math.abs(bars - Math.round(bars)) < ROUNDING
}
