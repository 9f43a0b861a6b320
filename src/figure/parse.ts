import { dances } from '../dance/dances.ts'
import { fault, type Problem } from '../problem.ts'
import { byteLength } from './byteLength.ts'
import type { Figure, Timing } from './figure.ts'
import { figureId } from './figureId.ts'
import type { Finding } from './finding.ts'
import { readActions } from './readActions.ts'
import { type Description, readDocument } from './readDocument.ts'
import { readShape } from './readShape.ts'
import { readTimings } from './readTimings.ts'
import { unknownKeys } from './unknownKeys.ts'

export type ParseResult =
  | { readonly ok: true; readonly figure: Figure; readonly warnings: readonly Problem[] }
  /** Warnings as well as errors, in the order of the file. */
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Bytes; a figure of 500 actions with all their moments has some 40 KB. */
const MOST_BYTES = 64 * 1024

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
  const { description, faults } = readDocument(text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text)
  const read = description ? readDescription(description, figureId(file)) : { figure: null, findings: [] }
  const ofText = faults.map(
    ({ fault: found, ...at }): Problem => ({ ...found, severity: 'error', where: { file, ...at } }),
  )
  const ofValues = description ? read.findings.map((finding) => problemAt(finding, description, file)) : []
  // What could not be read counts as nothing: that nothing is there is then no news.
  const said = new Set(ofText.map(placeName))
  const problems = [...ofText, ...ofValues.filter((problem) => !said.has(placeName(problem)))].sort(
    ({ where: one }, { where: other }) => one.line - other.line || one.column - other.column,
  )

  const { figure } = read
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

/** What the values mean; no figure when anything is wrong with them. */
function readDescription(
  { value }: Description,
  id: string,
): { readonly figure: Figure | null; readonly findings: readonly Finding[] } {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const what = Array.isArray(value) ? 'list' : value === null ? 'nothing' : 'text'
    return { figure: null, findings: [{ fault: fault('not-a-mapping', { what }), path: [] }] }
  }
  const shape = readShape(value)
  const newer = shape.findings.filter((finding) => finding.fault.code === 'version-unknown')
  // The rest of the file is written by rules that are not known here.
  if (newer.length > 0) return { figure: null, findings: newer }

  const { written } = shape
  const dance = shape.isSound(['dance']) ? dances[written.dance] : null
  const count =
    'actions' in value && Array.isArray(value.actions) && !shape.isRefused(['actions']) ? value.actions.length : null
  const { timings, findings: ofTimings } =
    dance && 'timing' in value ? readTimings(shape, value.timing, dance, count) : { timings: [], findings: [] }
  const { actions, findings: ofActions } = readActions(shape, timings[0] ?? null, dance)
  const findings = [...shape.findings, ...ofTimings, ...ofActions, ...unknownKeys(value)]

  const [first, ...others] = timings.filter((timing): timing is Timing => timing !== null)
  if (!first || !dance || findings.some((finding) => finding.severity !== 'warning')) return { figure: null, findings }
  const figure: Figure = {
    id,
    title: written.title.trim(),
    dance: written.dance,
    role: written.role,
    firstFoot: written['first foot'],
    starts: written.starts ?? null,
    ends: null,
    freeFoot: null,
    convention: written.convention ?? dance.convention,
    timings: [first, ...others],
    actions,
    stepsSource: null,
    tracks: { bodyTurn: [], rise: [], sway: [] },
    about: written.about?.trim() ?? '',
  }
  return { figure, findings }
}
