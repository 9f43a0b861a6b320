/** Something that is heard in a round of the loop. */
export type Tick = {
  /** Beats from the round's start, 0 ≤ at < the round's length. */
  readonly at: number
  /** How loud and high: first of the bar, a beat, a half (or quarter); null: no click here. */
  readonly click: 'bar' | 'beat' | 'half' | null
  /** The word that is said with it, by its key in the voice ('one' … 'eight', 'and', 'a', 'slow', 'quick'); null: nothing. */
  readonly say: string | null
}
