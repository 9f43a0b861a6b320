import type { Theme } from '../scene/palette.ts'
import { applyPalette } from './applyPalette.ts'

/** On the page's element while it must not be seen: it has no picture yet. */
const WAITING = 'data-waiting'

/** The theme that the device asks for. */
export const themeOfDevice = (): Theme => (matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light')

/** Gives the page that came as markup what the policy keeps out of markup: its colours, and the styles of single elements. */
export function layOutMarkup(home: HTMLElement): void {
  applyPalette(document.documentElement, themeOfDevice())
  for (const element of home.querySelectorAll<HTMLElement>('[data-style]')) {
    element.style.cssText = element.dataset.style ?? ''
    delete element.dataset.style
  }
}

/** Lets the page be seen. */
export const reveal = (home: HTMLElement): void => home.removeAttribute(WAITING)
