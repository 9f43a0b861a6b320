import { faults } from '../transfer/faults.ts'
import type { WayKind } from '../transfer/way.ts'

const KINDS: readonly WayKind[] = ['in time', ...faults.map(({ kind }) => kind)]

/** Every way of dancing by one word without spaces, as a command line takes it: "foot-first"; in time first. */
export const performanceKinds: ReadonlyMap<string, WayKind> = new Map(
  KINDS.map((kind) => [kind.replaceAll(' ', '-'), kind]),
)
