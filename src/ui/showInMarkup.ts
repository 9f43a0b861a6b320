import type { Player } from '../player.ts'
import type { Stage } from '../stage/stage.ts'
import { themeOfDevice } from './layOutMarkup.ts'
import { measurePictures } from './measurePictures.ts'

/**
 * Draws the first picture into the page as it came in markup; React finds it there and takes it over.
 * @returns false where there is no such page, or no room in it
 */
export function showInMarkup(player: Player, stage: Stage, page: HTMLElement): boolean {
  const home = page.querySelector('.panels')
  if (home === null) return false
  home.prepend(stage.home)
  const { width, height, ratio, rects } = measurePictures(home)
  if (width === 0 || height === 0) return false
  stage.resize(width, height, ratio)
  player.show(stage, rects, themeOfDevice() === 'dark')
  return true
}
