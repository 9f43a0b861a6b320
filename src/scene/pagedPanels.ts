import { type Page, pageAt } from './pages.ts'
import type { PanelFrame, PanelPicture, Rect } from './panelPicture.ts'
import { type PanelView, panelView, type Shown } from './panelView.ts'
import { viewsOf } from './view.ts'

/** One panel as it is drawn at a beat. */
export type PictureNow = { readonly rect: Rect; readonly picture: PanelPicture; readonly frame: PanelFrame }

/** The panels on the screen, page by page; a page is made when it is first asked for. */
export type PagedPanels = {
  readonly rects: readonly Rect[]
  /** The page that stands at a beat. */
  pageAt(t: number): number
  /** In the order of the rects. */
  panelsOn(page: number): readonly PanelView[]
  picturesAt(t: number): readonly PictureNow[]
}

const sizeOf = ({ width, height }: Rect): string => `${width}×${height}`
const area = ({ width, height }: Rect): number => width * height

/**
 * Frames panels for their places: the largest says how the floor lies and where pages turn, the others follow it.
 * @param order the panels' indices, from left to right
 * @param rects one a panel, in the same order, at least one; what is left over of either is not shown
 * @param names false: nothing tells which panel is which
 */
export function pagedPanels(
  shown: Shown,
  order: readonly number[],
  rects: readonly Rect[],
  names: boolean,
): PagedPanels {
  const places = rects.slice(0, order.length)
  const largest = places.reduce((found, rect) => (area(rect) > area(found) ? rect : found), places[0] as Rect)
  const like = viewsOf(shown, largest.width, largest.height)
  const bySize = new Map([[sizeOf(largest), like]])
  const views = places.map((rect) => {
    const known = bySize.get(sizeOf(rect)) ?? viewsOf(shown, rect.width, rect.height, like[0])
    bySize.set(sizeOf(rect), known)
    return known
  })
  const pages: readonly Page[] = like.map(({ page }) => page)
  const made = new Map<number, readonly PanelView[]>()
  const panelsOn = (page: number): readonly PanelView[] => {
    const known = made.get(page)
    if (known !== undefined) return known
    const panels = views.flatMap((ofPanel, place) => {
      const view = ofPanel[page]
      return view === undefined ? [] : [panelView(shown, order[place] as number, view, names)]
    })
    made.set(page, panels)
    return panels
  }
  return {
    rects: places,
    pageAt: (t) => pageAt(pages, t),
    panelsOn,
    picturesAt: (t) =>
      panelsOn(pageAt(pages, t)).map(({ picture, frameAt }, place) => ({
        rect: places[place] as Rect,
        picture,
        frame: frameAt(t),
      })),
  }
}
