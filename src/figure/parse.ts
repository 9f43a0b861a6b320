import type { Dance } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { fault, type Problem } from '../problem.ts'
import { byteLength, MOST_BYTES } from './byteLength.ts'
import { checkAlignments } from './checkAlignments.ts'
import { checkMoments } from './checkMoments.ts'
import type { Direction, Figure, Timing } from './figure.ts'
import { figureId } from './figureId.ts'
import { readVersion } from './figureSchema.ts'
import type { Finding } from './finding.ts'
import { CURRENT_VERSION, migrated } from './migrations.ts'
import { readActions } from './readActions.ts'
import { type Description, type Path, readDocument } from './readDocument.ts'
import { type Reading, read, refuse, type Slip } from './reading.ts'
import { readShape } from './readShape.ts'
import { readTimings } from './readTimings.ts'
import { readTracks } from './readTracks.ts'
import { shownText } from './shownText.ts'
import { unknownKeys } from './unknownKeys.ts'

export type ParseResult =
  | { readonly ok: true; readonly figure: Figure; readonly warnings: readonly Problem[] }
  /** Warnings as well as errors, in the order of the file. */
  | { readonly ok: false; readonly problems: readonly Problem[] }

const BYTE_ORDER_MARK = '\uFEFF'

/**
 * Reads a description.
 * @param text of the file: YAML of at most 64 KB
 * @param file its name, for the problems' places and the figure's id
 * @returns the figure, or all that is wrong with the text, each with its line and column. Never throws.
 */
export function parseFigure(text: string, file: string): ParseResult {
  const bytes = byteLength(text)
  if (bytes > MOST_BYTES) {
    const tooLarge = fault('too-large', { bytes, limit: MOST_BYTES })
    return { ok: false, problems: [{ ...tooLarge, severity: 'error', where: { file, line: 1, column: 1 } }] }
  }
  const strange = text.search(/[\0\uFFFD]/)
  if (strange >= 0) {
    const before = text.slice(0, strange).split(/\r\n|[\n\r]/)
    const where = { file, line: before.length, column: (before.at(-1) ?? '').length + 1 }
    return { ok: false, problems: [{ ...fault('not-text', {}), severity: 'error', where }] }
  }
  const { description, faults } = readDocument(text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text)
  const meant = description ? readDescription(description, figureId(file)) : { figure: null, findings: [] }
  // A newer description may do with YAML what this one does without.
  const isNewer = meant.findings.some(({ fault: { code } }) => code === 'version-unknown')
  const ofText = (isNewer ? [] : faults).map(
    ({ fault: found, ...place }): Problem => ({ ...found, severity: 'error', where: { file, ...place } }),
  )
  const ofValues = description ? meant.findings.map((finding) => problemAt(finding, description, file)) : []
  // What could not be read counts as nothing: that nothing is there is then no news.
  const said = new Set(ofText.map(placeName))
  const problems = [...ofText, ...ofValues.filter((problem) => !said.has(placeName(problem)))].sort(
    ({ where: one }, { where: other }) => one.line - other.line || one.column - other.column,
  )

  const { figure } = meant
  if (!figure || problems.some((problem) => problem.severity === 'error')) return { ok: false, problems }
  return { ok: true, figure, warnings: problems }
}

const placeName = ({ where }: Problem): string => `${where.line}:${where.column}`

function problemAt(
  { fault: found, path, place, severity = 'error' }: Finding,
  description: Description,
  file: string,
): Problem {
  const at = description.placeOf(path, place)
  const [part, index] = path
  const where = { file, ...at }
  const isAction = part === 'actions' && typeof index === 'number'
  return { ...found, severity, where: isAction ? { ...where, action: index + 1 } : where }
}

const at = (path: Path, slips: readonly Slip[]): Finding[] => slips.map(({ fault: found }) => ({ fault: found, path }))

/** Directions that do not say where a foot stands. */
const NO_PLACE: readonly Direction[] = ['in place', 'hold', 'tap', 'brush', 'half close']

/** What the values mean; no figure when anything is wrong with them. */
function readDescription(
  { value }: Description,
  id: string,
): { readonly figure: Figure | null; readonly findings: readonly Finding[] } {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const what = Array.isArray(value) ? 'list' : value === null ? 'nothing' : 'text'
    return { figure: null, findings: [{ fault: fault('not-a-mapping', { what }), path: [] }] }
  }
  const said = 'overfoot' in value && typeof value.overfoot === 'string' ? readVersion(value.overfoot) : null
  // The rest of a newer file is written by rules that are not known here.
  if (said && !said.ok) return { figure: null, findings: at(['overfoot'], said.slips) }
  const version = said ? said.value : CURRENT_VERSION
  const { value: now, aside } = migrated(value as Readonly<Record<string, unknown>>, version)
  const ofVersion = aside.map(
    (path): Finding => ({
      fault: fault('key-newer', { key: String(path.at(-1)), version, since: CURRENT_VERSION }),
      path,
      place: { onKey: true },
      severity: 'warning',
    }),
  )
  const { figure, findings } = readFigure(now, id)
  return { figure, findings: [...ofVersion, ...findings] }
}

/** The unit of the timings, if the dance's music is written in it; else what is wrong with it. */
function unitOf(writtenIn: string | undefined, dance: Dance | null): Reading<string | null> {
  const unit = writtenIn?.trim()
  if (unit === undefined || dance === null || unit === dance.timeSignature) return read(null)
  if (unit === dance.written?.timeSignature) return read(unit)
  const allowed = [dance.timeSignature, ...(dance.written ? [dance.written.timeSignature] : [])].join(', ')
  return refuse(fault('written-not-of-dance', { value: shownText(unit), dance: dance.name, allowed }))
}

/** What the values of the present version mean. */
function readFigure(
  value: Readonly<Record<string, unknown>>,
  id: string,
): { readonly figure: Figure | null; readonly findings: readonly Finding[] } {
  const shape = readShape(value)
  const { written } = shape
  const dance = shape.isSound(['dance']) ? dances[written.dance] : null
  const count =
    'actions' in value && Array.isArray(value.actions) && !shape.isRefused(['actions']) ? value.actions.length : null
  const unit = unitOf(shape.isSound(['written in']) ? written['written in'] : undefined, dance)
  const ofUnit = unit.ok ? [] : at(['written in'], unit.slips)
  const writtenIn = unit.ok ? unit.value : null
  const { timings, findings: ofTimings } =
    dance && 'timing' in value
      ? readTimings(shape, value.timing, dance, count, writtenIn)
      : { timings: [], findings: [] }
  const { actions, findings: ofActions } = readActions(shape, timings[0] ?? null, dance)
  const { tracks, findings: ofTracks } = readTracks(shape, timings[0] ?? null, dance)
  const freeFoot = (shape.isSound(['free foot']) ? written['free foot'] : undefined) ?? null
  const ofFreeFoot: Finding[] =
    freeFoot !== null && NO_PLACE.includes(freeFoot)
      ? [{ fault: fault('free-foot-impossible', { direction: freeFoot }), path: ['free foot'] }]
      : []
  const sound = timings.filter((timing): timing is Timing => timing !== null)
  const starts = (shape.isSound(['starts']) ? written.starts : undefined) ?? null
  const ends = (shape.isSound(['ends']) ? written.ends : undefined) ?? null
  // One turn that is not known, and none of the alignments after it is.
  const turns = shape.isSound(['actions']) && !ofActions.some(({ fault: { code } }) => code === 'foot-turns-many')
  const findings = [
    ...shape.findings,
    ...ofUnit,
    ...ofFreeFoot,
    ...ofTimings,
    ...ofActions,
    ...ofTracks,
    ...unknownKeys(value),
    // Own moments are counts of the first timing.
    ...(timings[0] ? checkMoments(actions, sound) : []),
    ...(turns ? checkAlignments({ starts, ends, actions }) : []),
  ]

  const [first, ...others] = sound
  if (!first || !dance || findings.some((finding) => finding.severity !== 'warning')) return { figure: null, findings }
  const figure: Figure = {
    id,
    title: written.title.trim(),
    dance: written.dance,
    role: written.role,
    firstFoot: written['first foot'],
    starts,
    ends,
    freeFoot,
    convention: written.convention ?? dance.convention,
    timings: [first, ...others],
    actions,
    stepsSource: written['steps source'] ?? null,
    tracks,
    about: written.about?.trim() ?? '',
  }
  return { figure, findings }
}
