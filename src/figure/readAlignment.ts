import { fault } from '../problem.ts'
import type { Alignment, RoomDirection } from './figure.ts'
import { nearestWord } from './nearestWord.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

const ways: Readonly<Record<Alignment['way'], true>> = { facing: true, backing: true, pointing: true }
const roomDirections: Readonly<Record<RoomDirection, true>> = {
  'line of dance': true,
  'diagonally to wall': true,
  wall: true,
  'diagonally to wall against line of dance': true,
  'against line of dance': true,
  'diagonally to centre against line of dance': true,
  centre: true,
  'diagonally to centre': true,
}

const alignments: ReadonlyMap<string, Alignment> = new Map(
  (Object.keys(ways) as Alignment['way'][]).flatMap((way) =>
    (Object.keys(roomDirections) as RoomDirection[]).map((to) => [`${way} ${to}`, { way, to }] as const),
  ),
)

/** "facing diagonally to centre", "backing line of dance". */
export function readAlignment(text: string): Reading<Alignment> {
  const alignment = alignments.get(text.trim())
  if (alignment) return read(alignment)
  const words = [...alignments.keys()]
  const nearest = nearestWord(text.slice(0, 80), words)
  const allowed = `${Object.keys(ways).join(' or ')} ${Object.keys(roomDirections).join(', ')}`
  return refuse(fault('value-unknown', { key: 'starts', value: shownText(text), nearest, allowed }))
}
