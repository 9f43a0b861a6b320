import { type KeptLadders, laddersInMemory } from '../practice.ts'

/** As much of a browser's storage as is used. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem'>

const KEY = 'overfoot.ladders'
/** The figures practised last; no shelf is to grow for ever. */
const MOST = 100

/** What lies there, by the figure's id, the latest last; nothing where it cannot be read. */
function read(shelf: Shelf): Map<string, unknown> {
  try {
    const kept: unknown = JSON.parse(shelf.getItem(KEY) ?? '[]')
    if (!Array.isArray(kept)) return new Map()
    return new Map(
      kept.filter((entry): entry is [string, unknown] => Array.isArray(entry) && typeof entry[0] === 'string'),
    )
  } catch {
    return new Map()
  }
}

/**
 * How far each figure was practised, kept in this browser from visit to visit. What lies there is read as something that comes
 * from outside: `restored` looks at it. Where nothing can be kept it lasts as long as the page.
 * @param shelf null: the browser has none, or forbids it
 */
export function keptLadders(shelf: Shelf | null): KeptLadders {
  const here = laddersInMemory()
  if (shelf === null) return here
  return {
    read: (figure) => here.read(figure) ?? read(shelf).get(figure),
    write(figure, ladder) {
      here.write(figure, ladder)
      const kept = read(shelf)
      kept.delete(figure)
      const latest = [...kept, [figure, ladder] as const].slice(-MOST)
      try {
        shelf.setItem(KEY, JSON.stringify(latest))
      } catch {
        // A full shelf: it is still there as long as the page is.
      }
    },
  }
}
