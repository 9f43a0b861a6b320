import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import type { Strip } from '../scene/strip.ts'
import { loopWords } from '../words/loopWords.ts'
import { along } from './linePlaces.ts'

/** What is looped. The way back to the whole figure is the loop's own button. */
export function StripPart({ player }: { readonly player: Player }) {
  const { part, steps } = useStore(player.store, (state) => state.lesson)
  return part === null ? null : <p className="strip-part">{loopWords.short(part.first, steps.last)}</p>
}

/** What leads into the part and what follows it is shaded: it is not what is practised. */
export function StripShades({ player, strip }: { readonly player: Player; readonly strip: Strip }) {
  const part = useStore(player.store, (state) => state.lesson.part)
  if (part === null) return null
  const sides = [
    { left: '0%', right: `${100 - along(strip, Math.max(strip.from, part.from))}%` },
    { left: `${along(strip, Math.min(strip.to, part.to))}%`, right: '0%' },
  ]
  return sides.map(({ left, right }) => <div key={left} className="strip-shade" style={{ left, right }} />)
}
