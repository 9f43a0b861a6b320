import { plainText } from './plainText.ts'

const LONGEST = 60

/** A user's text, fit to stand inside a sentence: plain, and at most 60 characters of it. */
export function shownText(text: string): string {
  const start = [...text.slice(0, 2 * LONGEST)].slice(0, LONGEST).join('')
  return start.length < text.length ? `${plainText(start)}…` : plainText(start)
}
