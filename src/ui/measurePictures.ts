import type { Rect } from '../scene/panelPicture.ts'

/** Sharper than this the eye does not see, and the work grows with its square. */
const SHARPEST = 3

/** Marks the places in the grid that the canvas draws into. */
export const PICTURE_CLASS = 'picture'

/** The grid, and in it the places of the pictures, in the grid's order; CSS px on whole device pixels. */
export type MeasuredPictures = {
  readonly width: number
  readonly height: number
  /** Device pixels per CSS pixel. */
  readonly ratio: number
  readonly rects: readonly Rect[]
}

/** To whole device pixels, so that edges are not blurred. */
const snapped = (value: number, ratio: number): number => Math.round(value * ratio) / ratio

function rectIn(home: DOMRect, picture: DOMRect, ratio: number): Rect {
  const x = snapped(picture.x - home.x, ratio)
  const y = snapped(picture.y - home.y, ratio)
  return {
    x,
    y,
    width: Math.max(1, snapped(picture.right - home.x, ratio) - x),
    height: Math.max(1, snapped(picture.bottom - home.y, ratio) - y),
  }
}

/** The elements in the grid that the canvas draws into. */
export const picturesIn = (home: Element): Element[] => [...home.querySelectorAll(`.${PICTURE_CLASS}`)]

/** @param home the grid */
export function measurePictures(home: Element): MeasuredPictures {
  const ratio = Math.min(SHARPEST, devicePixelRatio)
  const outer = home.getBoundingClientRect()
  const rects = picturesIn(home).map((picture) => rectIn(outer, picture.getBoundingClientRect(), ratio))
  return { width: Math.round(outer.width), height: Math.round(outer.height), ratio, rects }
}
