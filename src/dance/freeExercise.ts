import { beatValue } from '../units.ts'
import type { Dance, Source } from './dance.ts'
import { signs } from './signs.ts'
import { titles } from './titles.ts'

const judged: Source = { provenance: 'own judgement', text: '' }

/** Walks and drills that belong to no dance: 4/4 at the pace of a walk, 60 beats a minute in the middle of the range. */
export const freeExercise: Dance = {
  id: 'exercise',
  name: 'Free exercise',
  beatsPerBar: 4,
  timeSignature: '4/4',
  tempo: { from: 14, to: 16, source: judged },
  otherTempi: [],
  signs: signs(beatValue(2), beatValue(1), titles.leadAndFollowFaq),
  written: null,
  firstCount: 1,
  convention: 'split on the count',
  otherConventions: [],
  conventionSource: judged,
  counting: 'slows and quicks',
  barsPerPhrase: 8,
}
