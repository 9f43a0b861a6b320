import type { Path } from './readDocument.ts'

/** A description's values as they are written: text, null, lists, and mappings without a prototype. */
type Mapping = Readonly<Record<string, unknown>>

/** A description as the next version would have it, and the keys that its own version did not know: they are not used. */
export type Migrated = { readonly value: Mapping; readonly aside: readonly Path[] }

/** One step from a version to the next. Pure: what goes in is left as it is, and every path stays where it was. */
export type Migration = { readonly from: number; readonly step: (value: Mapping) => Migrated }

const isMapping = (value: unknown): value is Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Keys that came with version 2. A version-1 file may use the same words for notes of its own. */
const NEW_IN_2 = {
  figure: ['ends', 'free foot', 'written in', 'steps source', 'body turn', 'rise and fall', 'sway'],
  action: [...['pivot', 'twist', 'heel turn', 'placed', 'position', 'leading', 'alignment', 'footwork', 'note']],
} as const

function without(mapping: Mapping, keys: readonly string[], path: Path, aside: Path[]): Record<string, unknown> {
  const kept: Record<string, unknown> = Object.create(null)
  for (const [key, value] of Object.entries(mapping)) {
    if (keys.includes(key)) aside.push([...path, key])
    else kept[key] = value
  }
  return kept
}

function toVersion2(value: Mapping): Migrated {
  const aside: Path[] = []
  const figure = without(value, NEW_IN_2.figure, [], aside)
  const { actions } = figure
  if (Array.isArray(actions)) {
    figure.actions = actions.map((action, index) =>
      isMapping(action) ? without(action, NEW_IN_2.action, ['actions', index], aside) : action,
    )
  }
  return { value: figure, aside }
}

/** Every step there is, in order: a file of any version is read by the rules of the present one. */
export const migrations: readonly Migration[] = [{ from: 1, step: toVersion2 }]

/** The version that the steps lead to. */
export const CURRENT_VERSION = migrations.length + 1

/** The values of a description of version `from`, 1 to the present, as the present version has them. */
export function migrated(value: Mapping, from: number): Migrated {
  let now: Migrated = { value, aside: [] }
  for (const { step } of migrations.slice(from - 1)) {
    const next = step(now.value)
    now = { value: next.value, aside: [...now.aside, ...next.aside] }
  }
  return now
}
