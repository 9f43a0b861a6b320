import type { Way } from '../transfer/perform.ts'
import { beatsInWords, fraction } from './fraction.ts'

const FIRST_PARTS: Readonly<Record<string, string>> = {
  '¼': 'first quarter',
  '½': 'first half',
  '¾': 'first three quarters',
}

/** What a panel is called. */
export function wayName(way: Way): string {
  switch (way.kind) {
    case 'in time':
      return 'In time'
    case 'late':
      return way.by === 0 ? 'Late by nothing: in time' : `Late by ${beatsInWords(way.by)}`
    case 'early': {
      const part = FIRST_PARTS[fraction(way.part)]
      return part === undefined ? 'Early by nothing: in time' : `Early: ${part} of the step’s time`
    }
  }
}
