import { fault } from '../problem.ts'
import { roomEighths } from './alignmentEighths.ts'
import type { Alignment, RoomDirection } from './figure.ts'
import { nearestWord } from './nearestWord.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

const ways: Readonly<Record<Alignment['way'], true>> = { facing: true, backing: true, pointing: true }
/** "facing diagonally to centre". */
export const alignmentText = ({ way, to }: Alignment): string => `${way} ${to}`

const alignments: ReadonlyMap<string, Alignment> = new Map(
  (Object.keys(ways) as Alignment['way'][]).flatMap((way) =>
    (Object.keys(roomEighths) as RoomDirection[]).map((to) => [alignmentText({ way, to }), { way, to }] as const),
  ),
)

/** What charts shorten, for a better guess at what was meant; they are not read. */
const SHORT: Readonly<Record<string, string>> = {
  LOD: 'line of dance',
  ALOD: 'against line of dance',
  DW: 'diagonally to wall',
  DC: 'diagonally to centre',
  W: 'wall',
  C: 'centre',
  center: 'centre',
}
const written = (text: string): string =>
  text.replace(/\b[A-Za-z]+\b/g, (word) => (Object.hasOwn(SHORT, word) ? (SHORT[word] as string) : word))

/** "facing diagonally to centre", "backing line of dance", "pointing wall". @param key for the fault */
export function readAlignment(text: string, key: string): Reading<Alignment> {
  const alignment = alignments.get(text.trim())
  if (alignment) return read(alignment)
  const words = [...alignments.keys()]
  const nearest = nearestWord(written(text.slice(0, 80).trim()), words)
  const allowed = `${Object.keys(ways).join(' or ')} ${Object.keys(roomEighths).join(', ')}`
  return refuse(fault('value-unknown', { key, value: shownText(text), nearest, allowed }))
}

/** Every way to say an alignment. */
export const alignmentWords: readonly string[] = [...alignments.keys()]
