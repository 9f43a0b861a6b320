import type { Lesson } from '../session/lesson.ts'
import { labels } from '../words/labels.ts'
import { wayName } from '../words/wayName.ts'

/** What the panel is called: by its way, or by its place while names are off. @param place 0 = the leftmost */
export function panelName(lesson: Lesson, panel: number, place: number, names: boolean): string {
  const way = lesson.panels[panel]?.way
  return names && way !== undefined ? wayName(way, lesson.figure.convention) : labels.unnamedPanelSpoken(place)
}

/** The names from left to right. */
export const panelNames = (lesson: Lesson, order: readonly number[], names: boolean): string[] =>
  order.map((panel, place) => panelName(lesson, panel, place, names))
