import { fault } from '../problem.ts'
import { knownKeys } from './figureSchema.ts'
import type { Finding } from './finding.ts'
import { nearestWord } from './nearestWord.ts'
import type { Path } from './readDocument.ts'
import { trackKeys } from './readTracks.ts'
import { shownText } from './shownText.ts'

/** Names that reach an object's own machinery when careless code copies them: refused, not passed over. */
const REFUSED: readonly string[] = ['__proto__', 'constructor', 'prototype']

const isMapping = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Keys that the description does not know: warnings, because a newer program may. */
export function unknownKeys(value: unknown): readonly Finding[] {
  const findings: Finding[] = []
  const look = (mapping: unknown, path: Path, known: readonly string[]): void => {
    if (!isMapping(mapping)) return
    for (const key of Object.keys(mapping)) {
      if (known.includes(key)) continue
      const unknown = fault('key-unknown', {
        key: shownText(key),
        nearest: nearestWord(key, known),
        hasValue: mapping[key] !== null,
      })
      const at = { fault: unknown, path: [...path, key], place: { onKey: true } }
      findings.push(REFUSED.includes(key) ? at : { ...at, severity: 'warning' })
    }
  }
  look(value, [], knownKeys.figure)
  if (!isMapping(value)) return findings
  const { timing, actions } = value
  const lookInside = (list: unknown, path: Path, known: readonly string[]): void => {
    if (Array.isArray(list)) list.forEach((entry, index) => void look(entry, [...path, index], known))
  }
  if (Array.isArray(timing)) lookInside(timing, ['timing'], knownKeys.timing)
  else look(timing, ['timing'], knownKeys.timing)
  lookInside(actions, ['actions'], knownKeys.action)
  for (const key of trackKeys) lookInside(value[key], [key], knownKeys.checkpoint)
  return findings
}
