import { type Fault, fault } from '../problem.ts'
import { shownText } from './shownText.ts'

/** A fault as the library carries it: in the place of a sentence. */
export const carried = (found: Fault): string => JSON.stringify(found)

/** What stands in an issue's message. Every schema of the description gives one. */
export const faultOf = (issue: { readonly message: string }): Fault => JSON.parse(issue.message) as Fault

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
