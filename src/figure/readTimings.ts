import type { Dance, Source } from '../dance/dance.ts'
import { type Fault, fault } from '../problem.ts'
import type { Timing } from './figure.ts'
import type { Finding } from './finding.ts'
import type { Path } from './readDocument.ts'
import type { Shape } from './readShape.ts'
import { readTiming } from './readTiming.ts'
import { shownText } from './shownText.ts'

/** What a timing has whose source is not said. */
export const REMEMBERED: Source = { provenance: 'from memory', text: '' }

/** Where each timing stands: the file may give one or a list, each a text or a mapping. */
function placesOf(timing: unknown): readonly { readonly path: Path; readonly say: Path }[] {
  const place = (entry: unknown, path: Path) => ({ path, say: typeof entry === 'string' ? path : [...path, 'say'] })
  return Array.isArray(timing)
    ? timing.map((entry, index) => place(entry, ['timing', index]))
    : [place(timing, ['timing'])]
}

/**
 * The timings of a figure, checked against its actions.
 * @param timing as it stands in the file
 * @param actions how many there are; null when that is not known
 * @param writtenIn the time signature whose beats the timings count; null = the one danced
 * @returns null in place of a timing that is wrong or was not sound
 */
export function readTimings(
  shape: Shape,
  timing: unknown,
  dance: Dance,
  actions: number | null,
  writtenIn: string | null,
): { readonly timings: readonly (Timing | null)[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = []

  function readOne({ path, say }: { path: Path; say: Path }, index: number): Timing | null {
    const written = shape.isSound(path) ? shape.written.timing[index] : undefined
    if (!written) return null
    const complain = (found: Fault, at: number) =>
      found.code === 'values-length'
        ? findings.push({ fault: found, path: [...path, 'values'] })
        : findings.push({ fault: found, path: say, place: { offset: at } })
    const before = findings.length
    const reading = readTiming(written.say, dance, written.values ?? null, writtenIn)
    if (!reading.ok) {
      for (const { fault: found, at } of reading.faults) complain(found, at)
      return null
    }
    const { signs, values, firstCount, holds } = reading
    const shown = shownText(written.say)
    if (actions !== null && signs.length !== actions) {
      complain(fault('timing-length', { timing: shown, signs: signs.length, actions }), 0)
    }
    for (const { index: held, at } of holds) {
      if (!shape.isSound(['actions', held, 'direction'])) continue
      const direction = shape.written.actions[held]?.direction
      if (direction && direction !== 'hold') complain(fault('timing-hold-not-hold', { timing: shown, direction }), at)
    }
    const text = written.say.trim().replace(/\s+/g, ' ')
    const unsaid = shape.isSound(['timing source']) ? shape.written['timing source'] : undefined
    const source = written.source ?? unsaid ?? REMEMBERED
    return findings.length === before ? { text, signs, values, firstCount, source } : null
  }

  return { timings: placesOf(timing).map(readOne), findings }
}
