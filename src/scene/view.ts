import { type Body, bodyWithFeet } from '../pose/body.ts'
import { type Floor, layOutFloor } from '../pose/floor.ts'
import { turn, type Vector } from '../pose/vector.ts'
import type { Comparison } from '../transfer/comparison.ts'
import { perform } from '../transfer/perform.ts'
import type { Performance } from '../transfer/performance.ts'
import { actionBoxes, type Box, type Page, pageBox, pagesOf } from './pages.ts'
import type { Point } from './panelPicture.ts'
import { labelHalfWidth } from './placementLabels.ts'

/**
 * How the floor is looked at. dancer: the dancer faces up at the start, as the pupil stands; class: a dancer who faces
 * the class, down the picture; mirror: the same in a mirror, to dance along with: the pupil's right stays on the right;
 * room: as the room lies, the line of dance up, or to the right where that is larger.
 */
export type Seen = 'dancer' | 'class' | 'mirror' | 'room'

/** What is framed: which actions, and how the floor is looked at. */
export type Framed = Comparison & {
  readonly steps: { readonly first: number; readonly last: number }
  readonly seen: Seen
  /** The action, by index, at whose beginning the dancer faces up; left out: the first. */
  readonly facesUpBefore?: number
}

/** How the floor lies in a panel: the same for all panels, so that eyes can compare. */
export type View = {
  /** The floor's point in the panel's middle. */
  readonly middle: Vector
  /** The floor is turned to the right by this, radians. */
  readonly turned: number
  /** Up and down are exchanged, after the turn: as in a mirror that one stands before. */
  readonly mirrored: boolean
  readonly pixelsPerMetre: number
  /** Of the panel, CSS px. */
  readonly width: number
  readonly height: number
  readonly body: Body
  /** One floor a panel. */
  readonly floors: readonly Floor[]
  readonly idealFloor: Floor
  readonly page: Page
  /** 0 = the first. */
  readonly pageIndex: number
  readonly pages: readonly Page[]
}

/** Feet may be drawn this much larger than the floor's scale; the smallest that can be seen from two metres is taken. */
const FOOT_TIMES = [1, 1.25, 1.5] as const
const READABLE_FOOT = 1 / 6
/** A figure in which feet would be shorter than this part of the panel's height turns the page. */
const SHORTEST_FOOT = 1 / 9
/** No foot is drawn longer than this part of the panel: a small figure does not fill the panel with two feet. */
const LARGEST_FOOT = 1 / 3.5
/** Turning the floor must gain this much in size, for a dancer is read most easily facing up. */
const WORTH_TURNING = 1.25
/** Room beyond what is written beside the feet, and before and behind them; in text heights. */
const ROOM = { beside: 0.8, ahead: 0.9 } as const

/** Height of a count's figures, CSS px: larger in a larger panel, and none at all in a very small one. */
export function textPixels(height: number): number {
  return height < SMALLEST_WRITTEN ? 0 : Math.min(22, Math.max(13, height / 19))
}
const SMALLEST_WRITTEN = 170

/**
 * The part of each action at which its foot is put down, where that was set; read off the curve of the whole plan, also
 * where only some of its steps are danced.
 */
export function touchParts({ schedule }: Pick<Comparison, 'schedule'>): (number | null)[] {
  const { curve } = perform(schedule, { kind: 'in time' })
  return schedule.actions.map(({ moments, index }) =>
    moments.touches === null ? null : curve.at(moments.touches) - index,
  )
}

/** The floors of all panels, with feet drawn `times` as large as the floor's scale. */
type Laid = { readonly body: Body; readonly floors: readonly Floor[]; readonly idealFloor: Floor }

/** A way to frame a figure: how the floor is turned, the pages, and how large they can be. */
type Framing = Laid & {
  readonly turned: number
  readonly pages: readonly Page[]
  readonly boxes: readonly Box[]
  readonly pixelsPerMetre: number
}

/**
 * Frames the figure for panels of one size.
 * @param width of the panel, CSS px above 0
 * @param height likewise
 * @param like the view of another panel, where this one is to lie the same way round and turn the same pages
 * @returns one view a page
 */
export function viewsOf(framed: Framed, width: number, height: number, like: View | null = null): View[] {
  const { schedule, ideal, panels, steps, seen, facesUpBefore = 0 } = framed
  const touches = touchParts(framed)
  const layOut = (times: number): Laid => {
    const body = bodyWithFeet(times)
    // One floor for all who carry alike: the ways of dancing differ in time, seldom in weight.
    const known = new Map<string, Floor>()
    const lay = ({ carried }: Performance): Floor => {
      const key = carried.join()
      const floor = known.get(key) ?? layOutFloor(schedule.figure, carried, touches, body)
      known.set(key, floor)
      return floor
    }
    return { body, floors: panels.map(({ performance }) => lay(performance)), idealFloor: lay(ideal) }
  }
  const laid = new Map<number, Laid>()
  const laidOut = (times: number): Laid => {
    const known = laid.get(times) ?? layOut(times)
    laid.set(times, known)
    return known
  }
  const text = Math.max(8, textPixels(height))
  const beside = ROOM.beside + Math.max(...schedule.actions.map(({ sign }) => 2 * labelHalfWidth(sign)))
  // What is written stands on a foot's own side: beside it upright, above and below it when the floor is turned aside.
  const fitOf = (turned: number) => {
    const upright = seen !== 'room' || turned === 0
    const [across, along] = upright ? [beside, ROOM.ahead] : [ROOM.ahead, ROOM.beside + 2]
    const inner = [Math.max(40, width - 2 * across * text), Math.max(40, height - 2 * along * text)] as const
    return ({ left, right, low, high }: Box): number => Math.min(inner[0] / (right - left), inner[1] / (high - low))
  }
  const frame = (one: Laid, turned: number): Framing => {
    const boxes = actionBoxes([...new Set(one.floors)], turned)
    const { footLength } = one.body
    const largest = fitOf(turned)
    const scale = (page: Pick<Page, 'first' | 'last'>) => largest(pageBox(boxes, page, footLength / 2))
    const fits = (first: number, last: number) => scale({ first, last }) * footLength >= SHORTEST_FOOT * height
    const pages = like?.pages ?? pagesOf(steps, fits, (action) => ideal.times[action]?.full ?? 0)
    // All pages on one scale, or the same step would be long here and short there.
    return { ...one, turned, pages, boxes, pixelsPerMetre: Math.min(...pages.map(scale)) }
  }

  const { start, actions } = laidOut(1).idealFloor
  const facing = actions[facesUpBefore - 1]?.facing ?? start[schedule.figure.firstFoot].heading
  const turns =
    like !== null ? [like.turned] : seen === 'room' ? [0, Math.PI / 2] : [seen === 'class' ? Math.PI - facing : -facing]
  // Feet as large as they may be decide how many pages there are; then the smallest that can be read are drawn.
  let chosen = better(turns.map((turned) => frame(laidOut(FOOT_TIMES[2]), turned)))
  for (const times of FOOT_TIMES) {
    const candidates = chosen.pages.length > 1 ? [chosen.turned] : turns
    const tried = better(candidates.map((turned) => frame(laidOut(times), turned)))
    if (tried.pages.length > chosen.pages.length) continue
    chosen = tried
    if (tried.body.footLength * tried.pixelsPerMetre >= READABLE_FOOT * height) break
  }
  const { body, boxes, turned, pages, floors, idealFloor } = chosen
  const pixelsPerMetre = Math.min(chosen.pixelsPerMetre, (LARGEST_FOOT * height) / body.footLength)
  return pages.map((page, pageIndex) => {
    const { left, right, low, high } = pageBox(boxes, page, 0)
    const middle = turn({ x: (left + right) / 2, y: (low + high) / 2 }, -turned)
    return {
      ...{ middle, turned, mirrored: seen === 'mirror', pixelsPerMetre, width, height },
      ...{ body, floors, idealFloor, page, pageIndex, pages },
    }
  })
}

/** The floor is turned for fewer pages, or for a picture that is worth it. @param framings upright first */
function better(framings: readonly Framing[]): Framing {
  const [upright, aside] = framings as [Framing, Framing?]
  if (aside === undefined) return upright
  if (aside.pages.length !== upright.pages.length) return aside.pages.length < upright.pages.length ? aside : upright
  return aside.pixelsPerMetre > WORTH_TURNING * upright.pixelsPerMetre ? aside : upright
}

/** A point of the floor in the panel's own metres. */
export function inView({ middle, turned, mirrored }: View, { x, y }: Vector): Point {
  const placed = turn({ x: x - middle.x, y: y - middle.y }, turned)
  return mirrored ? { x: placed.x, y: -placed.y } : placed
}

/** A heading on the floor as it lies in the panel, radians. */
export const headingInView = ({ turned, mirrored }: View, heading: number): number =>
  mirrored ? Math.PI - (heading + turned) : heading + turned
