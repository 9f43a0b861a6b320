import type { Player } from '../player.ts'
import { withBeat } from '../session/session.ts'
import { type LinkedFigure, LONGEST_LINK, writeLink } from './link.ts'
import { packText } from './packText.ts'

const packed = new Map<string, Promise<string>>()

/**
 * The figure as a link carries it: to be made ready before anybody presses, for a browser lets a page copy only at once
 * after a press.
 */
export async function linkedFigure(player: Player): Promise<LinkedFigure> {
  const { session, own } = player.store.getState()
  const mine = own.find(({ figure }) => figure.id === session.figure)
  if (mine === undefined) return { demo: session.figure }
  const packing = packed.get(mine.text) ?? packText(mine.text)
  packed.clear()
  packed.set(mine.text, packing)
  return { packed: await packing }
}

/**
 * The fragment for what is on the screen now, which stops for it: a link is of one moment.
 * @param linked of the figure that is on the screen
 * @returns null when it would be too long to be passed on safely
 */
export function linkOf(player: Player, linked: LinkedFigure): string | null {
  player.pause()
  const { session, lesson } = player.store.getState()
  const fragment = writeLink(withBeat(session, player.beatNow()), lesson.written, linked)
  return fragment.length > LONGEST_LINK ? null : fragment
}
