/**
 * What can be wrong with a description: facts only. `words/` makes the sentences (rule, value, how to mend it).
 * A value that repeats the file's own text has been made plain and short first (`figure/shownText.ts`).
 */
export type ProblemValues = {
  /** The text cannot be read as YAML, or uses a part of YAML that descriptions do without. `detail` names which. */
  'not-yaml': { readonly detail: string }
  /** Bytes that are no text: a picture, a document of another program, or another encoding. */
  'not-text': Readonly<Record<never, never>>
  /** Refused before it is read. */
  'too-large': { readonly bytes: number; readonly limit: number }
  /** The file holds something else than keys with values. `what`: nothing, text, list. */
  'not-a-mapping': { readonly what: string }
  'version-missing': Readonly<Record<never, never>>
  'version-unknown': { readonly value: string; readonly known: number }
  'key-missing': { readonly key: string }
  /** `nearest` is '' when nothing is near. */
  'key-unknown': { readonly key: string; readonly nearest: string; readonly hasValue: boolean }
  /** A key that this file's version of the description did not have: not used. */
  'key-newer': { readonly key: string; readonly version: number; readonly since: number }
  /** A text that the key does not know. `allowed`: all that it knows, or examples of it; `nearest` as above. */
  'value-unknown': { readonly key: string; readonly value: string; readonly nearest: string; readonly allowed: string }
  /** A list where a text is wanted, and the like. `value`: nothing, list, mapping, or the text itself. */
  'value-wrong-kind': { readonly key: string; readonly value: string; readonly wanted: string }
  /** In characters. */
  'text-too-long': { readonly key: string; readonly length: number; readonly limit: number }
  'number-out-of-range': {
    readonly key: string
    readonly value: string
    readonly from: number
    readonly to: number
    readonly unit: 'm' | 'turn' | 'beat' | 'weight' | 'rise'
  }
  /** `position`: 1-based, in the timing's own text. */
  'timing-sign-unknown': { readonly sign: string; readonly position: number }
  /** `expected`: a count, or & inside a beat. */
  'timing-count-out-of-order': { readonly sign: string; readonly expected: string }
  /** An & or a, or a held count, with no step before it. */
  'timing-split-first': { readonly sign: string }
  /** & or a takes all, or more than all, that the step before it has: `left`, in beats. */
  'timing-split-too-long': { readonly sign: string; readonly left: number }
  /** S or Q in a dance that is counted in numbers only. */
  'timing-sign-not-of-dance': { readonly sign: string; readonly dance: string }
  /** Signs and actions do not go together. */
  'timing-length': { readonly timing: string; readonly signs: number; readonly actions: number }
  /** The timing says (hold) of a count on which the action is another. */
  'timing-hold-not-hold': { readonly timing: string; readonly direction: string }
  /** Beat values and signs do not go together. */
  'values-length': { readonly timing: string; readonly signs: number; readonly given: number }
  /** Timings, or the entries of a track. */
  'list-too-long': { readonly key: string; readonly count: number; readonly limit: number }
  'too-many-actions': { readonly count: number; readonly limit: number }
  'no-actions': Readonly<Record<never, never>>
  /** `last`: the highest count that can be named. */
  'moment-not-a-count': { readonly key: string; readonly value: string; readonly last: number }
  /** Two moments of one action, in beats from the action's own count. */
  'moments-out-of-order': {
    readonly earlier: string
    readonly earlierAt: number
    readonly later: string
    readonly laterAt: number
  }
  /** A hold or brush said to carry weight, or a tap or point said to carry all of it. */
  'weight-on-hold': { readonly direction: string; readonly value: string }
  /** `key`: turn, pivot, twist or heel turn. */
  'turn-not-a-turn': { readonly key: string; readonly value: string }
  /** An action turns on the foot in more than one way. */
  'foot-turns-many': { readonly first: string; readonly second: string }
  /** A turn on the foot that the action has no room for: `weight` as a share. */
  'foot-turn-impossible': { readonly key: string; readonly direction: string; readonly weight: number }
  /** In CBMP or across of a step that goes neither forward nor back. */
  'placed-impossible': { readonly placed: string; readonly direction: string }
  /** A direction that says nothing of where a foot stands that has not moved yet. */
  'free-foot-impossible': { readonly direction: string }
  /** What a chart says, against what start and turns lead to; both in words. `expected` '' = to no direction of the room. */
  'alignment-disagrees': {
    readonly key: string
    readonly value: string
    readonly expected: string
    readonly nearest: string
  }
  /** Own moments of two actions, in beats from the figure's start: the earlier action's comes after the later one's. */
  'moments-clash': {
    readonly timing: string
    readonly before: number
    readonly earlier: string
    readonly earlierAt: number
    readonly later: string
    readonly laterAt: number
  }
  /** `at` as written. `key`: the track. */
  'track-out-of-order': { readonly key: string; readonly at: string }
  'track-outside': { readonly key: string; readonly at: string }
  /** The unit of a timing that the dance's music is not written in. */
  'written-not-of-dance': { readonly value: string; readonly dance: string; readonly allowed: string }
  /** "1–4" where the counts do not run so. */
  'timing-range-wrong': { readonly sign: string }
  /** "×3" with nothing before it, or too often. */
  'timing-repeat-wrong': { readonly sign: string }
}

export type ProblemCode = keyof ProblemValues

/** What is wrong, without the place. */
export type Fault = {
  [Code in ProblemCode]: { readonly code: Code; readonly values: ProblemValues[Code] }
}[ProblemCode]

export type ProblemPlace = {
  readonly file: string
  /** 1-based. */
  readonly line: number
  /** 1-based, in UTF-16 units. */
  readonly column: number
  /** 1-based number of the action concerned, if one is. */
  readonly action?: number
}

export type Problem = Fault & {
  /** An error refuses the figure; a warning lets it load. */
  readonly severity: 'error' | 'warning'
  readonly where: ProblemPlace
}

/** A fault with the values that its code wants. */
export const fault = <Code extends ProblemCode>(code: Code, values: ProblemValues[Code]): Fault =>
  ({ code, values }) as Fault
