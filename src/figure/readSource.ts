import type { Provenance, Source } from '../dance/dance.ts'
import { fault } from '../problem.ts'
import { nearestWord } from './nearestWord.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

const provenances: Readonly<Record<Provenance, true>> = {
  published: true,
  'common practice': true,
  'from memory': true,
  'own judgement': true,
}
const words = Object.keys(provenances) as readonly Provenance[]

/** Characters: a title, an author and a page. */
const LONGEST = 300

/** What the text looks like, for those who check without reading. */
export const SOURCE_PATTERN = `^\\s*(${words.join('|')})\\s*([:,][\\s\\S]*)?$`

/**
 * "common practice", or a word of provenance and the text it comes from: "published: title, page".
 * A comma does as well as the colon, because YAML wants a value with a colon put in quotation marks.
 */
export function readSource(text: string, key: string): Reading<Source> {
  const trimmed = text.trim()
  const provenance = words.find(
    (word) => trimmed === word || (/^\s*[:,]/.test(trimmed.slice(word.length)) && trimmed.startsWith(word)),
  )
  if (!provenance) {
    const first = trimmed.split(/[:,]/, 1)[0] ?? ''
    const nearest = nearestWord(first, words)
    return refuse(fault('value-unknown', { key, value: shownText(first), nearest, allowed: words.join(', ') }))
  }
  if (trimmed.length > LONGEST) return refuse(fault('text-too-long', { key, length: trimmed.length, limit: LONGEST }))
  return read({
    provenance,
    text: trimmed
      .slice(provenance.length)
      .replace(/^\s*[:,]/, '')
      .trim(),
  })
}
