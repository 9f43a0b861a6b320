import type { Source } from './dance.ts'

/** A fact that was read in these texts; each is enough by itself. */
export const published = (...texts: readonly [...string[], string]): Source => ({
  provenance: 'published',
  text: texts.join('; '),
})
