import type { Way } from '../transfer/perform.ts'
import { beatsInWords } from './fraction.ts'
import { partOf } from './partOf.ts'

/** What a panel is called. */
export function wayName(way: Way): string {
  switch (way.kind) {
    case 'in time':
      return 'In time'
    case 'late':
      return way.by === 0 ? 'Late by nothing: in time' : `Late by ${beatsInWords(way.by)}`
    case 'early':
      return way.part === 1 ? 'Early by nothing: in time' : `Early: across in ${partOf(way.part)} the step’s time`
  }
}
