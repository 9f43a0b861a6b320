import * as v from 'valibot'
import { fault } from '../problem.ts'
import { carried, wrongKind } from './carried.ts'
import { nearestWord } from './nearestWord.ts'
import type { Reading } from './reading.ts'
import { shownText } from './shownText.ts'

const text = (key: string) => v.string(wrongKind(key, 'text'))

/** What the published schema says of a key: in words, and for texts with a meaning what they look like. */
type Told = { readonly says: string; readonly pattern?: string; readonly examples?: readonly string[] }

/** A text that is read where the dance is known. */
export const told = (key: string, { says, pattern, examples }: Told) =>
  v.pipe(
    text(key),
    v.description(says),
    v.metadata({ ...(pattern === undefined ? {} : { pattern }), ...(examples === undefined ? {} : { examples }) }),
  )

/** A text for people, of at most `limit` characters. */
export const bounded = (key: string, limit: number, says: string) =>
  v.pipe(
    text(key),
    v.description(says),
    v.metadata({ maxLength: limit }),
    v.check(
      (value) => [...value].length <= limit,
      (issue) => carried(fault('text-too-long', { key, length: [...issue.input].length, limit })),
    ),
  )

/** A text with a meaning of its own. */
export const spelled = <Value>(key: string, reader: (value: string, key: string) => Reading<Value>, how: Told) =>
  v.pipe(
    told(key, how),
    v.rawTransform<string, Value>(({ dataset, addIssue, NEVER }) => {
      const reading = reader(dataset.value, key)
      if (reading.ok) return reading.value
      for (const { fault: found, at } of reading.slips) addIssue({ message: carried(found, at) })
      return NEVER
    }),
  )

/** One of a few words. */
export const word = <Word extends string>(key: string, words: readonly Word[], says: string) =>
  v.pipe(
    v.picklist(words, (issue) => {
      if (typeof issue.input !== 'string' || issue.input.trim() === '') return wrongKind(key, 'text')(issue)
      const value = shownText(issue.input)
      const nearest = nearestWord(issue.input, words)
      return carried(fault('value-unknown', { key, value, nearest, allowed: words.join(', ') }))
    }),
    v.description(says),
  )
