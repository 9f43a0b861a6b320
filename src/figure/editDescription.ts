import type { Fault, ProblemPlace } from '../problem.ts'
import { byteLength, MOST_BYTES } from './byteLength.ts'
import { editedValue, sameValue } from './editedValue.ts'
import { type Path, readDocument } from './readDocument.ts'
import { splicesFor } from './splicesFor.ts'

/** What to put into a list: a word, or a few keys. */
export type NewEntry = string | Readonly<Record<string, string>>

export type Edit =
  /** A text at a path; a key that is missing is added, an entry that is a bare word becomes a mapping. */
  | { readonly kind: 'set'; readonly path: Path; readonly value: string }
  /** A key with its value, or an entry of a list; a remark on the same line goes with it. */
  | { readonly kind: 'remove'; readonly path: Path }
  /** Into a list, before the entry that has this position now, or at the end. */
  | { readonly kind: 'insert'; readonly path: Path; readonly value: NewEntry }

export type EditResult =
  | { readonly ok: true; readonly text: string }
  /** The text cannot be read as it is: what is wrong with it. `parseFigure` says the same. */
  | {
      readonly ok: false
      readonly reason: 'unreadable'
      readonly faults: readonly (Pick<ProblemPlace, 'line' | 'column'> & { readonly fault: Fault })[]
    }
  /**
   * Of which edit, from 0. nowhere: there is nothing at its path that it could be done to; not in place: the text is
   * written in a way that leaves no room for it.
   */
  | { readonly ok: false; readonly reason: 'nowhere' | 'not in place'; readonly edit: number }

const BYTE_ORDER_MARK = '\uFEFF'

/** @returns null when no splice makes the text read as it has to */
function edited(text: string, edit: Edit, wanted: unknown): string | null {
  for (const { from, to, text: put } of splicesFor(text, edit)) {
    const now = text.slice(0, from) + put + text.slice(to)
    const { description, faults } = readDocument(now)
    if (description && faults.length === 0 && sameValue(description.value, wanted)) return now
  }
  return null
}

/**
 * A description changed where it stands: remarks, unknown keys, order, quotation marks and line ends stay as they were,
 * and without edits every byte does. What comes out has been read again, and holds the edits and nothing else that is
 * new. A key that the text's version does not know wants its version set too.
 * @param edits one after the other; each path is of the text as the edits before have left it
 * @returns the text, or why it has been left as it is. Never throws.
 */
export function editDescription(text: string, edits: readonly Edit[]): EditResult {
  const mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : ''
  let now = text.slice(mark.length)
  const bytes = byteLength(now)
  if (bytes > MOST_BYTES) {
    const fault = { code: 'too-large', values: { bytes, limit: MOST_BYTES } } as const
    return { ok: false, reason: 'unreadable', faults: [{ fault, line: 1, column: 1 }] }
  }
  for (const [index, edit] of edits.entries()) {
    const { description, faults } = readDocument(now)
    if (!description || faults.length > 0) return { ok: false, reason: 'unreadable', faults }
    const wanted = editedValue(description.value, edit)
    if (wanted === undefined) return { ok: false, reason: 'nowhere', edit: index }
    if (sameValue(description.value, wanted)) continue
    const next = edited(now, edit, wanted)
    if (next === null) return { ok: false, reason: 'not in place', edit: index }
    now = next
  }
  return { ok: true, text: mark + now }
}
