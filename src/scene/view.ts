import { type Body, bodyWithFeet } from '../pose/body.ts'
import { type Floor, layOutFloor } from '../pose/floor.ts'
import { turn, type Vector } from '../pose/vector.ts'
import type { Comparison } from '../transfer/comparison.ts'
import type { Performance } from '../transfer/performance.ts'
import type { Point } from './panelPicture.ts'
import { labelHalfWidth } from './placementLabels.ts'

/** How the floor lies in a panel: the same for all panels, so that eyes can compare. */
export type View = {
  /** The floor's point in the panel's middle. */
  readonly middle: Vector
  /** The floor is turned to the right by this, radians, so that the figure's longest way fits. */
  readonly turned: number
  readonly pixelsPerMetre: number
  /** Of the panel, CSS px. */
  readonly width: number
  readonly height: number
  readonly body: Body
  /** One floor a panel. */
  readonly floors: readonly Floor[]
  readonly idealFloor: Floor
}

/** Feet may be drawn this much larger than the floor's scale; the smallest that can be seen from two metres is taken. */
const FOOT_TIMES = [1, 1.25, 1.5] as const
const READABLE_FOOT = 1 / 6
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
const SMALLEST_WRITTEN = 180

type Box = { readonly left: number; readonly right: number; readonly low: number; readonly high: number }

function footPlaces({ start, actions, swings }: Floor): Vector[] {
  const ends = [...swings.left, ...swings.right].map(({ end }) => end)
  return [start.left, start.right, ...actions.map(({ place }) => place), ...ends]
}

function boxOf(floors: readonly Floor[], turned: number, { footLength }: Body): Box {
  const points = floors.flatMap(footPlaces).map((place) => turn(place, turned))
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
  const around = footLength / 2
  return {
    left: Math.min(...xs) - around,
    right: Math.max(...xs) + around,
    low: Math.min(...ys) - around,
    high: Math.max(...ys) + around,
  }
}

/** The part of each action at which its foot is put down, where that was set; read off the plan's own curve. */
export function touchParts({ schedule, ideal }: Comparison): (number | null)[] {
  return schedule.actions.map(({ moments, index }) =>
    moments.touches === null ? null : ideal.curve.at(moments.touches) - index,
  )
}

/**
 * Frames the figure for panels of one size.
 * @param width of the smallest panel that must hold the picture, CSS px above 0
 * @param height likewise
 * @param like the view of another panel, where this one is to lie the same way round
 */
export function viewOf(comparison: Comparison, width: number, height: number, like: View | null = null): View {
  const touches = touchParts(comparison)
  const lay = ({ carried }: Performance, body: Body) => layOutFloor(comparison.schedule.figure, carried, touches, body)
  const text = Math.max(8, textPixels(height))
  const beside = ROOM.beside + Math.max(...comparison.schedule.actions.map(({ sign }) => 2 * labelHalfWidth(sign)))
  // What is written stands on a foot's own side: beside it upright, above and below it when the floor is turned.
  const innerFor = (turned: number) => {
    const [across, along] = turned === 0 ? [beside, ROOM.ahead] : [ROOM.ahead, ROOM.beside + 2]
    return { width: Math.max(40, width - 2 * across * text), height: Math.max(40, height - 2 * along * text) }
  }
  let view: View | null = null
  for (const times of FOOT_TIMES) {
    const body = bodyWithFeet(times)
    const floors = comparison.panels.map(({ performance }) => lay(performance, body))
    const candidates = [0, Math.PI / 2].map((turned) => {
      const box = boxOf(floors, turned, body)
      const inner = innerFor(turned)
      const fits = Math.min(inner.width / (box.right - box.left), inner.height / (box.high - box.low))
      return { turned, box, fits }
    })
    const [upright, aside] = candidates as [(typeof candidates)[number], (typeof candidates)[number]]
    const turns = like === null ? aside.fits > WORTH_TURNING * upright.fits : like.turned !== 0
    const chosen = turns ? aside : upright
    const pixelsPerMetre = Math.min(chosen.fits, (LARGEST_FOOT * height) / body.footLength)
    const { box, turned } = chosen
    const centre = { x: (box.left + box.right) / 2, y: (box.low + box.high) / 2 }
    view = {
      width,
      height,
      middle: turn(centre, -turned),
      turned,
      pixelsPerMetre,
      body,
      floors,
      idealFloor: lay(comparison.ideal, body),
    }
    if (body.footLength * pixelsPerMetre >= READABLE_FOOT * height) break
  }
  return view as View
}

/** A point of the floor in the panel's own metres. */
export function inView({ middle, turned }: View, { x, y }: Vector): Point {
  return turn({ x: x - middle.x, y: y - middle.y }, turned)
}
