import type { Provenance, Source } from '../dance/dance.ts'

const PROVENANCES: Readonly<Record<Provenance, string>> = {
  published: 'published',
  'common practice': 'common practice',
  'from memory': 'from memory: ask your teacher',
  'own judgement': 'our own choice: ask your teacher',
}

/** Where a fact comes from, in a few words. */
export const provenanceWords = ({ provenance }: Source): string => PROVENANCES[provenance]
