import { plainText } from '../figure/plainText.ts'

/** A user's text of several lines as one, fit to be shown: line breaks are spaces, and what would not show is written out. */
export const shownLine = (text: string): string => plainText(text.trim().replace(/\s+/g, ' '))
