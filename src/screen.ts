import { type PagedPanels, type PictureNow, pagedPanels } from './scene/pagedPanels.ts'
import { palettes } from './scene/palette.ts'
import type { Rect } from './scene/panelPicture.ts'
import type { PanelView } from './scene/panelView.ts'
import { createListeners } from './session/createListeners.ts'
import type { Lesson } from './session/lesson.ts'
import type { Session } from './session/session.ts'
import type { Stage } from './stage/stage.ts'
import type { Beat } from './units.ts'

/** The stage, and where on it each panel lies, in CSS px from left to right. */
export type Place = { readonly stage: Stage; readonly rects: readonly Rect[]; readonly dark: boolean }

/** Where the panels are drawn; nowhere before it has a place. */
export type Screen = {
  /** @returns whether it stands there already, with what is framed */
  stand(place: Place): boolean
  /** The panels framed anew for what is shown; the page is that of the beat. */
  frame(shown: Pick<Session, 'order' | 'names'>, lesson: Lesson, at: Beat): void
  /** One beat → one picture. */
  draw(at: Beat): void
  /** What is on it at a beat, panel by panel; empty before the first picture. */
  picturesAt(at: Beat): readonly PictureNow[]
  /** Told whenever the panels have been framed anew. Returns what stops it. */
  onFramed(listener: () => void): () => void
}

const isSame = (one: Place, other: Place): boolean =>
  one.stage === other.stage && one.dark === other.dark && JSON.stringify(one.rects) === JSON.stringify(other.rects)

export function createScreen(): Screen {
  let place: Place | null = null
  let paged: PagedPanels | null = null
  let page = 0
  let panels: readonly PanelView[] = []
  const listeners = createListeners<void>()

  /** Builds what stands on a page. */
  function turnTo(all: PagedPanels, next: number): void {
    page = next
    panels = all.panelsOn(next)
    place?.stage.setPanels(
      panels.map(({ picture }, index) => ({ rect: all.rects[index] as Rect, picture })),
      palettes[place.dark ? 'dark' : 'light'].stage,
    )
  }

  return {
    stand(next) {
      const stands = place !== null && paged !== null && isSame(place, next)
      place = next
      return stands
    },
    frame({ order, names }, lesson, at) {
      if (place === null || place.rects.length === 0) return
      paged = pagedPanels(lesson, order, place.rects, names)
      turnTo(paged, paged.pageAt(at))
      listeners.tell()
    },
    draw(at) {
      if (paged !== null && paged.pageAt(at) !== page) turnTo(paged, paged.pageAt(at))
      place?.stage.draw(panels.map((panel) => panel.frameAt(at)))
    },
    picturesAt: (at) => paged?.picturesAt(at) ?? [],
    onFramed: (listener) => listeners.add(listener),
  }
}
