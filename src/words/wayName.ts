import type { Convention } from '../dance/dance.ts'
import type { Way, WayKind } from '../transfer/way.ts'
import { beatsInWords, fraction } from './fraction.ts'
import { listed } from './listed.ts'
import { partOf } from './partOf.ts'

const SHORT: Readonly<Record<WayKind, string>> = {
  'in time': 'In time',
  late: 'Late',
  hurrying: 'Late, hurrying',
  early: 'Early',
  ahead: 'Ahead of the music',
  gaining: 'Gaining',
  'foot first': 'Foot without the body',
  placed: 'Placed, not carried',
  'cut short': 'Slow cut short',
  misplaced: 'Split beat misplaced',
  evened: 'Rhythm evened out',
  'no change': 'No change of weight',
  stops: 'Stops in the middle',
  'part weight': 'Never fully over',
  slip: 'One slip',
  swelling: 'Swelling',
  arrested: 'Arrested',
}

/** A way in a word or three. */
export const wayShort = (kind: WayKind): string => SHORT[kind]

/** At a line of the strip, where there is little room: the kinds are the shortest names. */
export const wayLine = (kind: WayKind): string => kind

const NOTHING = 'by nothing: in time'

/** How much of it, and how. @param struck steps are struck: foot and weight together, and so they come early */
function more(way: Way, struck: boolean): string {
  switch (way.kind) {
    case 'late':
      return way.by === 0 ? ` ${NOTHING}` : ` by ${beatsInWords(way.by)}`
    case 'hurrying':
      return way.by === 0 ? ` ${NOTHING}` : `: begins ${beatsInWords(way.by)} late`
    case 'early':
      if (struck && way.part < 1) return ': half a beat sooner'
      return way.part === 1 ? ` ${NOTHING}` : `: across in ${partOf(way.part)} the step’s time`
    case 'ahead':
      return way.by === 0 ? `: ${NOTHING}` : ` by ${beatsInWords(way.by)}`
    case 'gaining':
      return way.by === 0 ? ` ${NOTHING}` : `: ${beatsInWords(way.by)} more each step`
    case 'foot first':
      return way.by === 0 ? `: ${NOTHING}` : `: the body waits ${beatsInWords(way.by)}`
    case 'part weight':
      return way.part === 1 ? `: ${NOTHING}` : `: ${fraction(way.part)} of the weight`
    case 'slip':
      return way.by === 0 ? ` ${NOTHING}` : `: begins ${beatsInWords(way.by)} late`
    case 'swelling':
    case 'arrested':
      return ': in time'
    default:
      return ''
  }
}

/** "step 2", "steps 2 and 3"; '' where it is danced on all. @param on indices of actions */
function steps(way: Way): string {
  const on = 'on' in way && way.on !== undefined ? way.on : way.kind === 'slip' ? [0] : []
  if (on.length === 0) return ''
  return `${on.length === 1 ? 'step' : 'steps'} ${listed(on.map((index) => String(index + 1)))}`
}

/** What a panel is called: "Late by ½ beat"; "Early: across in half the step’s time, step 2". */
export function wayName(way: Way, convention?: Convention): string {
  const name = `${SHORT[way.kind]}${more(way, convention === 'struck')}`
  const where = steps(way)
  return where === '' ? name : `${name}${name.includes(': ') ? ', ' : ': '}${where}`
}
