import type { Fault, Problem } from '../problem.ts'
import type { Path, PlaceOptions } from './readDocument.ts'

/** Something wrong, and where in the description's values. */
export type Finding = {
  readonly fault: Fault
  readonly path: Path
  readonly place?: PlaceOptions
  /** An error unless it is said. */
  readonly severity?: Problem['severity']
}
