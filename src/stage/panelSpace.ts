import type { PanelPicture, Rect } from '../scene/panelPicture.ts'
import { type LineWidths, lineWidths } from './lineWidths.ts'

/** Space between a panel's edge and what stands in its corners, in pixels at scale 1. */
export const CORNER_MARGIN = 16

/** What every drawing of a panel needs to turn view metres into pixels from the panel's middle (y down). */
export type PanelSpace = {
  readonly width: number
  readonly height: number
  readonly pixelsPerMetre: number
  /** The foot as drawn, in pixels. */
  readonly footLength: number
  readonly textHeight: number
  readonly widths: LineWidths
}

export function panelSpace(rect: Rect, picture: PanelPicture): PanelSpace {
  const footLength = picture.footLength * picture.pixelsPerMetre
  return {
    width: rect.width,
    height: rect.height,
    pixelsPerMetre: picture.pixelsPerMetre,
    footLength,
    textHeight: picture.textHeight * picture.pixelsPerMetre,
    widths: lineWidths(rect.width, rect.height, footLength),
  }
}
