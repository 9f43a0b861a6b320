import { MOST_BYTES } from '../figure/byteLength.ts'
import { type OwnFigure, ownFigure } from '../figure/ownFigure.ts'
import type { Player } from '../player.ts'
import { rehearse } from '../session/rehearse.ts'
import type { Session } from '../session/session.ts'
import { freshName } from './freshName.ts'
import { linkedSession, readLink } from './link.ts'
import { unpackText } from './packText.ts'

/**
 * unknown figure: not in this page's menu; unfit: the figure or a value is not possible here; damaged and newer: see
 * `readLink`.
 */
export type LinkRefusal = 'damaged' | 'newer' | 'unknown figure' | 'unfit'

/** What `player.restore` wants. */
export type LinkedView = { readonly session: Session; readonly brought?: OwnFigure }

async function bring(player: Player, packed: string): Promise<OwnFigure | null> {
  const text = await unpackText(packed, MOST_BYTES)
  if (text === null) return null
  const { parseFigure } = await import('../figure/parse.ts')
  const file = freshName(player.store.getState().own, text, 'linked text')
  const parsed = parseFigure(text, file)
  return parsed.ok ? ownFigure(parsed.figure, text, file) : null
}

/**
 * What a link says, all of it read, checked and rehearsed; the page does not change by it.
 * @param fragment of the address, without its #
 */
export async function viewOfLink(player: Player, fragment: string): Promise<LinkedView | LinkRefusal> {
  const reading = readLink(fragment)
  if (!reading.ok) return reading.reason
  const { figure, fields } = reading.content
  try {
    if ('demo' in figure) {
      const demo = player.figures.find(({ id }) => id === figure.demo)
      if (demo === undefined) return 'unknown figure'
      const session = linkedSession(fields, demo)
      return session === null ? 'unfit' : { session }
    }
    const brought = await bring(player, figure.packed)
    const session = brought === null ? null : linkedSession(fields, brought.figure)
    if (brought === null || session === null) return 'unfit'
    rehearse(session, brought.figure)
    return { session, brought }
  } catch {
    return 'unfit'
  }
}
