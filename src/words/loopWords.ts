import type { Dance } from '../dance/dance.ts'
import { beatsInWords } from './fraction.ts'

/** Why a figure cannot follow itself: the reasons that `session/canFollowItself.ts` gives. */
const WHY_NOT = {
  'weight on both feet': 'at its end the weight is on both feet, and neither is free to begin again.',
  'another foot':
    'it ends on the other foot, and with feet swapped its turns, positions or leading sides would go the wrong way.',
  'partners elsewhere': 'it ends in another position with the partner than it begins in.',
  'another way': 'it ends facing another way than it begins, so another figure follows there.',
  'feet elsewhere': 'it begins from where the free foot stands, and at the end that foot stands elsewhere.',
  'still moving': 'its last step is not done when the first should begin.',
} as const

/** The part of a figure that is looped. */
type Part = {
  readonly part: { readonly from: number; readonly to: number }
  readonly steps: { readonly first: number; readonly last: number }
  readonly first: number
  readonly round: number
}

type Joined = { readonly swapped: boolean; readonly rounds: number; readonly round: number }

const steps = (first: number, last: number): string =>
  first === last ? `Step ${first + 1}` : `Steps ${first + 1} ${last === first + 1 ? 'and' : 'to'} ${last + 1}`

/** "1 bar", "2 bars"; in beats where it is no whole number of bars. */
function long(beats: number, { beatsPerBar }: Pick<Dance, 'beatsPerBar'>): string {
  const bars = beats / beatsPerBar
  if (Math.abs(bars - Math.round(bars)) > 1e-9) return beatsInWords(beats)
  return `${Math.round(bars)} ${Math.round(bars) === 1 ? 'bar' : 'bars'}`
}

/** What of a round is not danced; '' where that is nothing, or no whole bars. */
function ready({ part, round }: Pick<Part, 'part' | 'round'>, dance: Pick<Dance, 'beatsPerBar'>): string {
  const danced = part.to - part.from
  const bars = [danced, round - danced].map((beats) => beats / dance.beatsPerBar)
  if (bars.some((count) => count < 1 || !Number.isInteger(count))) return ''
  return `: ${bars[0]} to dance, ${bars[1]} to get ready`
}

/** What is said of looping a part of a figure, and of joining its end to its beginning. */
export const loopWords = {
  from: 'Loop from',
  to: 'Loop to',
  whole: 'Whole figure',
  wayBack: 'Whole, 100 %',
  wayBackHint: 'Back to the whole figure at full tempo',
  title: 'Loop',
  hint: 'Drag along the strip, or choose here.',
  bars: (bars: number): string => (bars === 1 ? 'This bar' : 'Two bars'),
  /** Why no two bars can be looped. */
  oneBar: 'This figure has one bar.',
  /** "to the end of bar 2": a part ends where the next bar would begin. */
  endOfBar: (bar: number): string => `the end of bar ${bar}`,
  countIn: 'Count-in before the loop',
  countInText: (bars: number): string => (bars === 0 ? 'None' : bars === 1 ? '1 bar' : `${bars} bars`),
  /** "Loop: steps 4 to 6". @param first, last by index */
  short: (first: number, last: number): string => `Loop: ${steps(first, last).toLowerCase()}`,
  /** "Steps 4 to 6, led in by step 3. A round lasts 3 bars: 2 to dance, 1 to get ready." */
  part: ({ part, steps: danced, first, round }: Part, dance: Pick<Dance, 'beatsPerBar'>): string =>
    `${steps(first, danced.last)}${danced.first < first ? `, led in by step ${danced.first + 1}` : ''}. ` +
    `A round lasts ${long(round, dance)}${ready({ part, round }, dance)}.`,

  join: 'Whole figure without a stop',
  /** "The figure can follow itself: a round lasts 1 bar. Every second round begins with the other foot." */
  joined: ({ swapped, round, rounds }: Joined, dance: Pick<Dance, 'beatsPerBar'>): string =>
    [
      `The figure can follow itself: a round lasts ${long(round, dance)}.`,
      swapped ? 'Every second round begins with the other foot.' : '',
      rounds > 1 && !Number.isInteger(round / dance.beatsPerBar)
        ? `After ${rounds} rounds it begins on the count of the first one again.`
        : '',
    ]
      .filter((part) => part !== '')
      .join(' '),
  notJoined: (why: keyof typeof WHY_NOT): string => `The figure cannot follow itself: ${WHY_NOT[why]}`,
} as const
