import { fault } from '../problem.ts'
import { nearestWord } from './nearestWord.ts'
import { type Reading, read, refuse, type Slip } from './reading.ts'
import { shownText } from './shownText.ts'

/** Heel, toe, ball, flat of the foot, in the order in which they meet the floor; brackets for what may be left out. */
const LETTERS = /^\(?[HTBF]{1,4}\)?(\([HTBF]{1,3}\))?$/
/** Words that charts put beside the letters. */
const WORDS: readonly string[] = [
  ...['heel', 'toe', 'toes', 'ball', 'flat', 'whole', 'foot', 'inside', 'outside', 'edge', 'of', 'with', 'pressure'],
  ...['lowering', 'then', 'and', 'to', 'in', 'WF', 'IE', 'OE', 'NFR', 'no', 'rise', 'on', 'both', 'feet', 'L', 'R'],
  ...['left', 'right', 'LF', 'RF'],
]
/** What the text looks like, for those who check without reading. */
export const FOOTWORK_PATTERN = `^[\\s,;/.-]*((${LETTERS.source.slice(1, -1)}|${WORDS.join('|')})([\\s,;/.-]+|$))*$`
/** In characters. */
const LONGEST = 60

export const FOOTWORK_EXAMPLES = [
  'HT',
  'TH',
  'T',
  'BF',
  'TH(T)',
  'inside edge of T',
  'whole foot',
  'H, lowering',
] as const

/** "HT", "TH(T)", "inside edge of T, lowering": kept as written. */
export function readFootwork(text: string): Reading<string> {
  if (text.length > LONGEST) {
    return refuse(fault('text-too-long', { key: 'footwork', length: text.length, limit: LONGEST }))
  }
  const slips: Slip[] = []
  for (const { 0: word, index: at } of text.matchAll(/[^\s,;/.-]+/g)) {
    if (LETTERS.test(word) || WORDS.includes(word)) continue
    const value = shownText(word)
    const allowed = FOOTWORK_EXAMPLES.join('; ')
    const nearest = nearestWord(word, WORDS)
    slips.push({ fault: fault('value-unknown', { key: 'footwork', value, nearest, allowed }), at })
  }
  return slips.length > 0 ? { ok: false, slips } : read(text.trim().replace(/\s+/g, ' '))
}
