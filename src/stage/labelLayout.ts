import type { Box } from '../scene/freeSpot.ts'
import { type LaidOutText, layOut } from '../scene/glyphs.ts'
import type { PlacementLabel } from '../scene/panelPicture.ts'
import type { PanelSpace } from './panelSpace.ts'

/** The step's number beside its count, as a part of the count's height. */
const NUMBER_SIZE = 0.6

/** A label's parts on one line, in pixels; the ring's radius is 0 when there is no number. */
export type LabelLayout = {
  readonly number: LaidOutText
  readonly count: LaidOutText
  readonly radius: number
  readonly ringX: number
  readonly countX: number
  readonly y: number
  readonly width: number
}

/** Ring with the step's number, then the count, together centred on the label's place. */
export function layOutLabel(label: PlacementLabel, space: PanelSpace): LabelLayout {
  const height = space.textHeight
  const count = layOut(label.count, height)
  const number = layOut(label.number, height * NUMBER_SIZE)
  const radius = label.number === '' ? 0 : Math.max(number.height, number.width) / 2 + height * 0.24
  const gap = radius > 0 && label.count !== '' ? height * 0.36 : 0
  const width = 2 * radius + gap + count.width
  const left = label.x * space.pixelsPerMetre - width / 2
  return {
    number,
    count,
    radius,
    ringX: left + radius,
    countX: left + 2 * radius + gap + count.width / 2,
    y: -label.y * space.pixelsPerMetre,
    width,
  }
}

export function labelBox(label: PlacementLabel, space: PanelSpace): Box {
  const { width, radius, y } = layOutLabel(label, space)
  return {
    x: label.x * space.pixelsPerMetre,
    y,
    halfWidth: width / 2 + 3,
    halfHeight: Math.max(radius, space.textHeight / 2) + 3,
  }
}
