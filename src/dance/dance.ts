import type { Beat, BeatValue } from '../units.ts'

export type DanceId =
  | 'waltz'
  | 'tango'
  | 'viennese waltz'
  | 'foxtrot'
  | 'quickstep'
  | 'samba'
  | 'cha-cha-cha'
  | 'rumba'
  | 'paso doble'
  | 'jive'
  | 'exercise'

/**
 * Where in a step the beat lies (common practice where not said otherwise):
 * split on the count: on the count of a one-beat step the foot is placed and the weight half way;
 * full on the count: on the count the weight is over the new foot;
 * struck: foot and weight together on the count, then stillness.
 */
export type Convention = 'split on the count' | 'full on the count' | 'struck'

/** Where a fact comes from: read in a published text, usual in the trade but unpublished, remembered, or our own judgement. */
export type Provenance = 'published' | 'common practice' | 'from memory' | 'own judgement'

export type Source = {
  readonly provenance: Provenance
  /** The text, for a reader who wants to look it up; '' when there is none. */
  readonly text: string
}

/** Bars a minute, both ends included. */
export type TempoRange = { readonly from: number; readonly to: number; readonly source: Source }

export type Dance = {
  readonly id: DanceId
  /** As written on a screen: "Viennese Waltz". */
  readonly name: string
  readonly beatsPerBar: number
  /** As printed at the head of the music, e.g. "3/4". */
  readonly timeSignature: string
  /** The dance's range; the default tempo is its middle. */
  readonly tempo: TempoRange
  /** What other bodies print, one entry a body. */
  readonly otherTempi: readonly TempoRange[]
  /** What the signs are worth in beats as danced; null where the dance is counted in numbers only. */
  readonly signs: {
    readonly S: BeatValue | null
    readonly Q: BeatValue | null
    readonly '&': BeatValue
    readonly a: BeatValue
    readonly source: Source
  }
  /** The same dance as its music is written, where that differs from how it is danced (tango in 2/4). */
  readonly written: {
    readonly timeSignature: string
    readonly beatsPerBar: number
    readonly danced: Beat
    readonly source: Source
  } | null
  /** The count of the bar on which figures begin, 1-based. */
  readonly firstCount: number
  readonly convention: Convention
  readonly otherConventions: readonly Convention[]
  readonly conventionSource: Source
  /** How a teacher of this dance counts aloud. */
  readonly counting: Counting
  /** Bars in a phrase of the music, as usually taught. */
  readonly barsPerPhrase: number
}

/** The same time read aloud in three ways. */
export type Counting = 'slows and quicks' | 'bars and beats' | 'half beats'
