import type { Edit, NewEntry } from './editDescription.ts'
import type { Path } from './readDocument.ts'

/** Texts, null, lists, and mappings without a prototype: as a description is read. */
type Mapping = Readonly<Record<string, unknown>>

const isMapping = (value: unknown): value is Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const mappingOf = (entries: readonly (readonly [string, unknown])[]): Mapping => {
  const mapping: Record<string, unknown> = Object.create(null)
  for (const [key, value] of entries) mapping[key] = value
  return mapping
}

/** The key under which a bare word stands when it becomes a mapping. */
export const bareKey = (path: Path): string => (path[0] === 'timing' ? 'say' : 'direction')

const entryOf = (value: NewEntry): unknown => (typeof value === 'string' ? value : mappingOf(Object.entries(value)))

/** An edit at the last step of its path; undefined when it leads nowhere. */
function atEnd(value: unknown, step: string | number, edit: Edit): unknown {
  if (Array.isArray(value)) {
    if (typeof step !== 'number' || !Number.isInteger(step) || step < 0) return undefined
    if (edit.kind === 'insert') return value.toSpliced(Math.min(step, value.length), 0, entryOf(edit.value))
    if (step >= value.length) return undefined
    if (edit.kind === 'remove') return value.toSpliced(step, 1)
    return typeof value[step] === 'object' && value[step] !== null ? undefined : value.with(step, edit.value)
  }
  if (edit.kind === 'insert' || typeof step !== 'string') return undefined
  if (isMapping(value)) {
    const others = Object.entries(value).filter(([key]) => key !== step)
    if (edit.kind === 'remove') return step in value ? mappingOf(others) : undefined
    const isScalar = typeof value[step] !== 'object' || value[step] === null
    return isScalar ? mappingOf([...others, [step, edit.value]]) : undefined
  }
  // A bare word that takes a key; of nothing, a mapping with that key alone.
  const canHaveKeys = edit.kind === 'set' && edit.path.length > 1 && step !== bareKey(edit.path)
  if (!canHaveKeys) return undefined
  const bare = typeof value === 'string' ? [[bareKey(edit.path), value] as const] : []
  return mappingOf([...bare, [step, edit.value]])
}

/**
 * What a description's value is after an edit: what the edited text has to read back as.
 * @returns undefined when the path leads nowhere
 */
export function editedValue(value: unknown, edit: Edit, path: Path = edit.path): unknown {
  const [step, ...rest] = path
  if (step === undefined) return undefined
  if (rest.length === 0) return atEnd(value, step, edit)
  const isThere = Array.isArray(value) ? typeof step === 'number' : isMapping(value) && step in value
  if (!isThere) return undefined
  const inner = (value as Mapping)[step]
  const edited = inner === undefined ? undefined : editedValue(inner, edit, rest)
  if (edited === undefined) return undefined
  return Array.isArray(value)
    ? value.with(step as number, edited)
    : mappingOf(Object.entries(value as Mapping).map(([key, old]) => [key, key === step ? edited : old]))
}

/** Whether two descriptions hold the same, in whatever order of keys. */
export function sameValue(one: unknown, other: unknown): boolean {
  if (Array.isArray(one) || Array.isArray(other)) {
    if (!Array.isArray(one) || !Array.isArray(other) || one.length !== other.length) return false
    return one.every((value, index) => sameValue(value, other[index]))
  }
  if (!isMapping(one) || !isMapping(other)) return one === other
  const keys = Object.keys(one)
  return (
    keys.length === Object.keys(other).length && keys.every((key) => key in other && sameValue(one[key], other[key]))
  )
}
