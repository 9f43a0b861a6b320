import type { Source } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { type BeatValue, beatValue } from '../units.ts'
import type { Figure, Timing } from './figure.ts'
import { readTiming } from './readTiming.ts'
import { REMEMBERED } from './readTimings.ts'
import { beatText, sourceText } from './texts.ts'
import type { Written } from './writeYaml.ts'

const same = <Value>(a: readonly Value[], b: readonly Value[]): boolean =>
  a.length === b.length && a.every((value, index) => value === b[index])

const sameSource = (a: Source, b: Source): boolean => a.provenance === b.provenance && a.text === b.text

/** In beats: "3/4 1/2 3/4". */
const valuesText = (values: readonly BeatValue[]): string =>
  values.map((value) => beatText(value / beatValue(1))).join(' ')

/**
 * A timing in a unit; null when it cannot be said in it. Values are given where the signs alone are read as others.
 * @param source null when it is said elsewhere
 */
function timingIn(figure: Figure, timing: Timing, source: Source | null, unit: string | null): Written | null {
  const dance = dances[figure.dance]
  const danced = unit === null ? 1 : (dance.written?.danced ?? 1)
  const given = timing.values.map((value) => value / danced) as BeatValue[]
  for (const values of [null, given]) {
    const read = readTiming(timing.text, dance, values, unit)
    if (!read.ok || read.firstCount !== timing.firstCount) continue
    if (!same(read.signs, timing.signs) || !same(read.values, timing.values)) continue
    if (values === null && source === null) return timing.text
    return {
      say: timing.text,
      ...(values === null ? {} : { values: valuesText(given) }),
      ...(source === null ? {} : { source: sourceText(source) }),
    }
  }
  return null
}

/**
 * The keys of a figure's timings, in danced beats wherever those can say them. A source that all share is said once.
 * @throws RangeError when a timing cannot be written
 */
export function writeTimings(figure: Figure): { readonly [key: string]: Written } {
  const { timings, dance } = figure
  const [{ source }] = timings
  const isShared = timings.every((timing) => sameSource(timing.source, source))
  const ownSource = (timing: Timing) => (isShared || sameSource(timing.source, REMEMBERED) ? null : timing.source)
  for (const unit of [null, dances[dance].written?.timeSignature ?? null]) {
    const written = timings.map((timing) => timingIn(figure, timing, ownSource(timing), unit))
    const all = written.filter((timing) => timing !== null)
    const [first] = all
    if (first === undefined || all.length < written.length) continue
    return {
      ...(unit === null ? {} : { 'written in': unit }),
      timing: all.length === 1 ? first : all,
      ...(isShared && !sameSource(source, REMEMBERED) ? { 'timing source': sourceText(source) } : {}),
    }
  }
  throw new RangeError(`the timings of "${figure.title}" cannot be written`)
}
