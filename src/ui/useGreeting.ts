import { useEffect } from 'react'
import { atSpeed } from '../dance/speed.ts'
import type { Player } from '../player.ts'
import { tellingBeat } from '../session/tellingBeat.ts'
import type { Stage } from '../stage/stage.ts'

/** Slow enough for eyes that see it for the first time; 1 = the dance's usual tempo. */
const SPEED = 0.5
/** Then it rests by itself: who came to read is not to be disturbed for long. */
const ROUNDS = 3

/** Who has been greeted; not again when the page comes back from a failure. */
const greeted = new WeakSet<Player>()

/**
 * A visitor sees the first figure moving at once, slowly, for a few rounds, and then its still. Where motion is unwelcome:
 * the still. Whatever the visitor does ends it, and whoever comes by a link sees what the link says.
 */
export function useGreeting(player: Player, stage: Promise<Stage>): void {
  useEffect(() => {
    if (location.hash.length > 1 || document.visibilityState !== 'visible') return
    const stops: (() => void)[] = []
    const end = (): void => {
      for (const stop of stops.splice(0)) stop()
    }
    const begin = (): void => {
      const { lesson } = player.store.getState()
      if (player.store.getState() !== first || greeted.has(player)) return
      greeted.add(player)
      const still = tellingBeat(lesson)
      if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
        player.seek(still)
        return
      }
      player.setTempo(atSpeed(lesson.dance, SPEED))
      player.play()
      const greeting = player.store.getState()
      let rounds = 0
      let before: number = lesson.range.from
      // Whoever presses anything has taken over.
      const acted = new AbortController()
      addEventListener('pointerdown', end, { signal: acted.signal })
      addEventListener('keydown', end, { signal: acted.signal })
      stops.push(
        () => acted.abort(),
        player.store.subscribe((state) => {
          if (state !== greeting) end()
        }),
        player.onGrid((at) => {
          if (at < before) rounds++
          before = at
          if (rounds < ROUNDS || at < still) return
          end()
          player.pause()
        }),
      )
    }
    const first = player.store.getState()
    let gone = false
    stage.then(
      () => {
        if (!gone) begin()
      },
      () => {},
    )
    return () => {
      gone = true
      end()
    }
  }, [player, stage])
}
