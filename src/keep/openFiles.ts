import { MOST_BYTES } from '../figure/byteLength.ts'
import type { Player } from '../player.ts'
import { fault, type Problem } from '../problem.ts'
import { freshName } from './freshName.ts'

/** What became of one text. */
export type Opened =
  | {
      readonly kind: 'shown' | 'refused'
      readonly file: string
      readonly text: string
      /** Warnings where it is shown; errors too where it is refused. */
      readonly problems: readonly Problem[]
    }
  | { readonly kind: OpeningFailure; readonly file: string }

/**
 * unreadable: the browser could not hand over the file (a folder, or gone); undrawable: no problem, and yet no picture;
 * not loaded: the parser is missing; foreign: neither a file nor a text.
 */
type OpeningFailure = 'unreadable' | 'undrawable' | 'not loaded' | 'foreign'

async function openText(player: Player, text: string, file: string): Promise<Opened> {
  try {
    await import('../figure/parse.ts')
  } catch {
    return { kind: 'not loaded', file }
  }
  try {
    const parsed = await player.open(text, file)
    return parsed.ok
      ? { kind: 'shown', file, text, problems: parsed.warnings }
      : { kind: 'refused', file, text, problems: parsed.problems }
  } catch {
    return { kind: 'undrawable', file }
  }
}

/** What was pasted, or dropped as a text. */
export const openPasted = (player: Player, text: string): Promise<Opened> =>
  openText(player, text, freshName(player.store.getState().own, text, 'pasted text'))

async function openFile(player: Player, file: File): Promise<Opened> {
  const { name, size } = file
  if (size > MOST_BYTES) {
    const where = { file: name, line: 1, column: 1 }
    const tooLarge = fault('too-large', { bytes: size, limit: MOST_BYTES })
    return { kind: 'refused', file: name, text: '', problems: [{ ...tooLarge, severity: 'error', where }] }
  }
  let text: string
  try {
    text = await file.text()
  } catch {
    return { kind: 'unreadable', file: name }
  }
  return openText(player, text, name)
}

/** One after the other, in the order given: the last good one is on the screen then. Nothing is asked of their names. */
export async function openFiles(player: Player, files: readonly File[]): Promise<Opened[]> {
  const opened: Opened[] = []
  for (const file of files) opened.push(await openFile(player, file))
  return opened
}
