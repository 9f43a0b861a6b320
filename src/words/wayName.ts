import type { Way } from '../transfer/perform.ts'
import { firstPart } from './firstPart.ts'
import { beatsInWords } from './fraction.ts'

/** What a panel is called. */
export function wayName(way: Way): string {
  switch (way.kind) {
    case 'in time':
      return 'In time'
    case 'late':
      return way.by === 0 ? 'Late by nothing: in time' : `Late by ${beatsInWords(way.by)}`
    case 'early':
      return way.part === 1 ? 'Early by nothing: in time' : `Early: ${firstPart(way.part)} of the step’s time`
  }
}
