import { beatValue } from '../units.ts'
import type { Dance, DanceId, Source } from './dance.ts'
import { signs } from './signs.ts'
import { tempoRange } from './tempoRange.ts'
import { titles } from './titles.ts'

const judged: Source = { provenance: 'own judgement', text: '' }

const slow = beatValue(2)
const quick = beatValue(1)

/** The five Latin dances, in the order of a competition. Phrases of 8 bars where not said otherwise: the usual frame, from memory. */
export const latinDances: Readonly<
  Record<Extract<DanceId, 'samba' | 'cha-cha-cha' | 'rumba' | 'paso doble' | 'jive'>, Dance>
> = {
  samba: {
    id: 'samba',
    name: 'Samba',
    beatsPerBar: 2,
    timeSignature: '2/4',
    tempo: tempoRange(50, 52, titles.dtvRules, titles.pttRules),
    otherTempi: [
      tempoRange(52, 52, titles.ndcaAmerican),
      tempoRange(48, 50, titles.ndcaInternational),
      tempoRange(50, 50, titles.idtaCards),
      tempoRange(50, 50, titles.istdNotes),
      tempoRange(48, 50, titles.danceFaq),
    ],
    // In 2/4 a slow is one beat: half of what it is in the dances in 4/4.
    signs: signs(beatValue(1), beatValue(1, 2), titles.idtaCards, titles.istdNotes),
    written: null,
    firstCount: 1,
    convention: 'full on the count',
    otherConventions: [],
    conventionSource: judged,
    // Most figures are charted 1 a 2.
    counting: 'bars and beats',
    // The music is mostly in two-bar phrases (the ISTD-derived notes; dancesportmalaysia.blogspot.com, 6 Apr 2009).
    barsPerPhrase: 2,
  },
  'cha-cha-cha': {
    id: 'cha-cha-cha',
    name: 'Cha-Cha-Cha',
    beatsPerBar: 4,
    timeSignature: '4/4',
    tempo: tempoRange(30, 32, titles.dtvRules, titles.pttRules),
    otherTempi: [
      tempoRange(28, 30, titles.wdoRules),
      tempoRange(28, 30, titles.ndcaAmerican),
      tempoRange(32, 32, titles.ndcaInternational),
      tempoRange(32, 34, titles.danceFaq),
    ],
    signs: signs(slow, quick, titles.leadAndFollowFaq),
    written: null,
    // 2 3 4 & 1 (the IDTA revision cards; Dancing Tid-bits no. 3).
    firstCount: 2,
    convention: 'full on the count',
    otherConventions: ['split on the count'],
    conventionSource: { provenance: 'own judgement', text: `split on the count: ${titles.chaChaText}` },
    counting: 'bars and beats',
    barsPerPhrase: 8,
  },
  rumba: {
    id: 'rumba',
    name: 'Rumba',
    beatsPerBar: 4,
    timeSignature: '4/4',
    tempo: tempoRange(25, 27, titles.dtvRules, titles.pttRules),
    otherTempi: [
      tempoRange(32, 36, titles.ndcaAmerican),
      tempoRange(26, 27, titles.ndcaInternational),
      tempoRange(27, 29, titles.danceFaq),
    ],
    signs: signs(slow, quick, titles.leadAndFollowFaq, titles.eumRumba),
    written: null,
    // 2 3 4-1 (FAQ 19; Dancing Tid-bits no. 188).
    firstCount: 2,
    convention: 'full on the count',
    otherConventions: ['split on the count'],
    conventionSource: {
      provenance: 'own judgement',
      text: `full on 1 of 4-1: ${titles.beatTwoFaq}; split on the count: ${titles.tidBitsRumba}`,
    },
    counting: 'bars and beats',
    barsPerPhrase: 8,
  },
  'paso doble': {
    id: 'paso doble',
    name: 'Paso Doble',
    beatsPerBar: 2,
    timeSignature: '2/4',
    tempo: tempoRange(60, 62, titles.dtvRules, titles.pttRules),
    otherTempi: [
      tempoRange(56, 60, titles.wdoRules),
      tempoRange(58, 60, titles.ndcaAmerican),
      tempoRange(62, 62, titles.istdNotes),
    ],
    // One step a beat: no slows and quicks.
    signs: signs(null, null),
    written: null,
    firstCount: 1,
    convention: 'struck',
    otherConventions: [],
    // The strike is described for the tango; no text was found that describes it for the paso doble.
    conventionSource: { provenance: 'own judgement', text: `as in the tango: ${titles.moore}; ${titles.blackford}` },
    counting: 'bars and beats',
    // Two-bar phrases in the ISTD-derived notes; four bars in Dancing Tid-bits nos. 43 and 103. Two, because
    // figures of 4 and 12 counts then end with a phrase as well.
    barsPerPhrase: 2,
  },
  jive: {
    id: 'jive',
    name: 'Jive',
    beatsPerBar: 4,
    timeSignature: '4/4',
    tempo: tempoRange(42, 44, titles.dtvRules, titles.pttRules),
    otherTempi: [
      tempoRange(44, 46, titles.ndcaInternational),
      tempoRange(44, 44, titles.idtaCards),
      tempoRange(44, 52, titles.danceFaq),
    ],
    signs: signs(slow, quick, titles.idtaCards, titles.leadAndFollowFaq),
    written: null,
    firstCount: 1,
    convention: 'full on the count',
    otherConventions: [],
    conventionSource: judged,
    // Q Q Q a Q Q a Q (the IDTA revision cards): six beats, so that bars would break the second chassé's 3 a 4.
    counting: 'slows and quicks',
    barsPerPhrase: 8,
  },
}
