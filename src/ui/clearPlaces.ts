import type { Strip, StripLine } from '../scene/strip.ts'
import { along, type LinePlace, linePlaces, rightAt } from './linePlaces.ts'
import type { StripRoom } from './useStripRoom.ts'

/** Of the names, in rem; a letter's width in em, for wide faces; how high a name and a foot's name are, in rem. */
const FONT = 0.875
const LETTER = 0.68
const HIGH = 1
/** From the line to its name, em. */
export const NAME_GAP = 0.6
/** The feet's names stand at the left of the picture, this far out, in rem. */
const FEET = 5

type Line = Pick<StripLine, 'panel' | 'points'>
type Box = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }

/** Per cent of the strip's picture, from its top. @param right the weight's place, 0 left to 1 right */
type LevelOf = (right: number) => number

const meets = (a: Box, b: Box): boolean => a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top

/** Where a name would lie, in rem from the picture's corner. */
export function nameBox(place: LinePlace, name: string, room: StripRoom, levelOf: LevelOf): Box {
  const width = [...name].length * LETTER * FONT
  const x = (place.x / 100) * room.width
  const y = (levelOf(1 - place.y / 100) / 100) * room.height
  const left = place.side === 'after' ? x + NAME_GAP * FONT : x - NAME_GAP * FONT - width
  return { left, right: left + width, top: y - HIGH / 2, bottom: y + HIGH / 2 }
}

/** Other places on the same line: where it passes these levels, from left to right. */
function* otherPlaces(strip: Strip, line: Line): Generator<LinePlace> {
  for (const level of [0.5, 0.2, 0.8]) {
    for (let k = 1; k < line.points.length; k++) {
      const [a, b] = [line.points[k - 1], line.points[k]]
      if (a === undefined || b === undefined || a.right === b.right || (a.right - level) * (b.right - level) > 0)
        continue
      const t = a.t + ((level - a.right) / (b.right - a.right)) * (b.t - a.t)
      const at = { panel: line.panel, x: along(strip, t), y: (1 - rightAt(line, t)) * 100 }
      yield { ...at, side: 'after' }
      yield { ...at, side: 'before' }
    }
  }
}

/**
 * Where the lines' names stand, so that no name lies on another, on a foot's name or beyond the picture's end: as
 * `linePlaces` has them, or elsewhere on their line. One that has no room at all is left out.
 * @param nameOf by the panel
 */
export function clearPlaces(
  strip: Strip,
  nameOf: (panel: number) => string,
  room: StripRoom,
  levelOf: LevelOf,
): readonly LinePlace[] {
  const feet = [levelOf(0), levelOf(1)].map((level) => {
    const y = (level / 100) * room.height
    return { left: -FEET, right: 0, top: y - HIGH / 2, bottom: y + HIGH / 2 }
  })
  const taken: Box[] = [...feet]
  return linePlaces(strip).flatMap((usual) => {
    const line = strip.lines.find(({ panel }) => panel === usual.panel)
    for (const place of [usual, ...(line === undefined ? [] : otherPlaces(strip, line))]) {
      const box = nameBox(place, nameOf(usual.panel), room, levelOf)
      if (box.left < -FEET || box.right > room.width || taken.some((other) => meets(box, other))) continue
      taken.push(box)
      return [place]
    }
    return []
  })
}
