import { type Fault, fault } from '../problem.ts'
import type { Slip } from './reading.ts'
import { shownText } from './shownText.ts'

/** A fault as the library carries it: in the place of a sentence. @param at how far inside a text, where it is a part of it */
export const carried = (found: Fault, at?: number): string =>
  JSON.stringify({ fault: found, ...(at === undefined ? {} : { at }) } satisfies Slip)

/** What stands in an issue's message. Every schema of the description gives one. */
export const slipOf = (issue: { readonly message: string }): Slip => JSON.parse(issue.message) as Slip

function kindOf(input: unknown): string {
  if (typeof input === 'string') return input.trim() === '' ? 'nothing' : shownText(input)
  if (Array.isArray(input)) return input.length === 0 ? 'nothing' : 'list'
  return input === null || input === undefined ? 'nothing' : 'mapping'
}

/** A message: the value is no text, list or mapping, as one is wanted. */
export const wrongKind = (key: string, wanted: string) => (issue: { readonly input: unknown }) =>
  carried(fault('value-wrong-kind', { key, value: kindOf(issue.input), wanted }))

/** A mapping's message: the key it lacks, or that it is none. */
export const mapping =
  (key: string, wanted: string) => (issue: { readonly input: unknown; readonly expected: string | null }) => {
    const [, missing] = /^"(.+)"$/.exec(issue.expected ?? '') ?? []
    if (missing === undefined) return wrongKind(key, wanted)(issue)
    return carried(missing === 'overfoot' ? fault('version-missing', {}) : fault('key-missing', { key: missing }))
  }
