import { beat, beatValue } from '../units.ts'
import type { Dance, DanceId, Source } from './dance.ts'
import { published } from './published.ts'
import { signs } from './signs.ts'
import { tempoRange } from './tempoRange.ts'
import { titles } from './titles.ts'

// In print there are only single opinions on how far the weight is when the count falls.
const usual: Source = { provenance: 'common practice', text: '' }

const slow = beatValue(2)
const quick = beatValue(1)

/** The five standard dances, in the order of a competition. Phrases of 8 bars: the usual frame of a routine, from memory. */
export const standardDances: Readonly<
  Record<Extract<DanceId, 'waltz' | 'tango' | 'viennese waltz' | 'foxtrot' | 'quickstep'>, Dance>
> = {
  waltz: {
    id: 'waltz',
    name: 'Waltz',
    beatsPerBar: 3,
    timeSignature: '3/4',
    tempo: tempoRange(28, 30, titles.dtvRules, titles.pttRules),
    otherTempi: [
      tempoRange(28, 30, titles.ndcaAmerican),
      tempoRange(28, 32, titles.usistdAmerican),
      tempoRange(30, 30, titles.idtaCards),
      tempoRange(31, 31, titles.moore),
      tempoRange(28, 31, titles.danceFaq),
    ],
    signs: signs(null, null, titles.idtaCards),
    written: null,
    firstCount: 1,
    convention: 'split on the count',
    otherConventions: [],
    conventionSource: usual,
    counting: 'bars and beats',
    // Published for waltz music too, beside 16 (factspage.blogspot.com, 2013).
    barsPerPhrase: 8,
  },
  tango: {
    id: 'tango',
    name: 'Tango',
    beatsPerBar: 4,
    timeSignature: '4/4',
    tempo: tempoRange(31, 33, titles.dtvRules, titles.pttRules),
    otherTempi: [
      tempoRange(32, 34, titles.wdoRules),
      tempoRange(30, 32, titles.ndcaAmerican),
      tempoRange(33, 33, titles.ndcaInternational),
      tempoRange(33, 34, titles.idtaCards),
      tempoRange(32, 34, titles.danceFaq),
    ],
    signs: signs(slow, quick, titles.lamberty),
    // In 2/4 S is 1 written beat, Q a half and & a quarter; only the ratio 2 : 1 : 1/2 is the same.
    written: {
      timeSignature: '2/4',
      beatsPerBar: 2,
      danced: beat(2),
      source: published(titles.idtaCards, titles.leadAndFollowFaq, titles.urdcTango),
    },
    firstCount: 1,
    convention: 'split on the count',
    otherConventions: ['struck'],
    conventionSource: { provenance: 'common practice', text: `struck: ${titles.moore}; ${titles.blackford}` },
    counting: 'slows and quicks',
    barsPerPhrase: 8,
  },
  'viennese waltz': {
    id: 'viennese waltz',
    name: 'Viennese Waltz',
    beatsPerBar: 3,
    timeSignature: '3/4',
    tempo: tempoRange(58, 60, titles.dtvRules, titles.pttRules),
    otherTempi: [
      tempoRange(56, 60, titles.wdoRules),
      tempoRange(54, 58, titles.ndcaAmerican),
      tempoRange(56, 60, titles.ndcaInternational),
      tempoRange(56, 60, titles.danceFaq),
    ],
    signs: signs(null, null),
    written: null,
    firstCount: 1,
    convention: 'split on the count',
    otherConventions: [],
    conventionSource: usual,
    counting: 'bars and beats',
    barsPerPhrase: 8,
  },
  foxtrot: {
    id: 'foxtrot',
    name: 'Slow Foxtrot',
    beatsPerBar: 4,
    timeSignature: '4/4',
    tempo: tempoRange(28, 30, titles.dtvRules, titles.pttRules),
    otherTempi: [tempoRange(30, 32, titles.ndcaAmerican), tempoRange(30, 30, titles.idtaCards)],
    signs: signs(slow, quick, titles.idtaCards, titles.leadAndFollowFaq),
    written: null,
    firstCount: 1,
    convention: 'split on the count',
    otherConventions: [],
    conventionSource: usual,
    counting: 'slows and quicks',
    barsPerPhrase: 8,
  },
  quickstep: {
    id: 'quickstep',
    name: 'Quickstep',
    beatsPerBar: 4,
    timeSignature: '4/4',
    tempo: tempoRange(50, 52, titles.dtvRules, titles.pttRules),
    otherTempi: [tempoRange(48, 50, titles.wdoRules), tempoRange(50, 50, titles.idtaCards)],
    signs: signs(slow, quick, titles.idtaCards, titles.leadAndFollowFaq),
    written: null,
    firstCount: 1,
    convention: 'split on the count',
    otherConventions: [],
    conventionSource: usual,
    counting: 'slows and quicks',
    barsPerPhrase: 8,
  },
}
