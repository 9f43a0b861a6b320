import type { Splice } from './splicesFor.ts'

type Span = { readonly from: number; readonly to: number }

/** Where the comma behind an entry is; null when there is none before `limit`. Remarks may hold commas too. */
function commaBehind(text: string, from: number, limit: number): number | null {
  for (let at = from; at < limit; at++) {
    if (text[at] === ',') return at
    if (text[at] === '#') at = text.slice(at).search(/\n|$/) + at
  }
  return null
}

/**
 * Takes an entry out of braces or brackets, with its comma and the remark behind it on its line. Remarks on other lines
 * and those of other entries stay.
 * @param end behind the closing bracket
 */
export function flowSplice(text: string, entries: readonly Span[], index: number, end: number): Splice {
  const { from, to } = entries[index] as Span
  const next = entries[index + 1]
  const before = entries[index - 1]
  const comma = commaBehind(text, to, next?.from ?? end - 1)
  // The last of several on one line takes the comma before it along.
  if (!next && before && /^[ \t]*,[ \t]*$/.test(text.slice(before.to, from))) return { from: before.to, to, text: '' }
  const own = comma === null ? to : comma + 1
  const [rest] = /^[ \t]*(#[^\r\n]*)?/.exec(text.slice(own)) ?? ['']
  const lineStart = text.lastIndexOf('\n', from - 1) + 1
  const breaks = /^\r?\n/.exec(text.slice(own + rest.length))
  if (!breaks) return { from, to: own + rest.length, text: '' }
  const isAlone = text.slice(lineStart, from).trim() === ''
  if (isAlone) return { from: lineStart, to: own + rest.length + breaks[0].length, text: '' }
  return { from: text.slice(0, from).replace(/[ \t]+$/, '').length, to: own + rest.length, text: '' }
}
