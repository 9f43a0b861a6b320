import { plainText } from '../figure/plainText.ts'

/** Characters shown before and after the place. */
const BEFORE = 40
const AFTER = 60

/** A line of a user's text around a place, each part fit to stand on one line. */
export type Excerpt = { readonly before: string; readonly at: string; readonly after: string }

const shown = (text: string): string => plainText(text.replaceAll('\t', '⇥'))

/**
 * @param line 1-based, counted as the parser counts
 * @param column 1-based, in UTF-16 units; behind the line's end: `at` is empty
 */
export function excerpt(text: string, line: number, column: number): Excerpt {
  const lines = (text.startsWith('\uFEFF') ? text.slice(1) : text).split('\n')
  const whole = (lines[line - 1] ?? '').replace(/\r$/, '')
  const start = column - 1
  const point = whole.codePointAt(start)
  const at = point === undefined ? '' : String.fromCodePoint(point)
  const after = whole.slice(start + at.length)
  return {
    before: `${start > BEFORE ? '…' : ''}${shown(whole.slice(Math.max(0, start - BEFORE), start))}`,
    at: shown(at),
    after: `${shown(after.slice(0, AFTER))}${after.length > AFTER ? '…' : ''}`,
  }
}
