import { useEffect } from 'react'
import type { Player } from '../player.ts'
import type { KeyDeed } from '../words/keyWords.ts'
import { keyPlace } from './keyPlace.ts'
import { keyDeed } from './keys.ts'

/** What each deed is to the player. */
const DEEDS: Readonly<Record<KeyDeed, (player: Player) => void>> = {
  toggle: (player) => player.toggle(),
  'step back': (player) => player.step(-1),
  'step forward': (player) => player.step(1),
  'bar back': (player) => player.step(-stepsABar(player)),
  'bar forward': (player) => player.step(stepsABar(player)),
  start: (player) => player.seek(player.store.getState().lesson.range.from),
  end: (player) => player.seek(player.store.getState().lesson.range.to),
}

function stepsABar(player: Player): number {
  const { beatsPerBar, grid } = player.store.getState().lesson.schedule
  return Math.round(beatsPerBar / grid)
}

/** The keyboard, for the whole page. @param letters whether single letters do anything */
export function useKeys(player: Player, letters: boolean): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.defaultPrevented) return
      const press = {
        key: event.key,
        code: event.code,
        shift: event.shiftKey,
        modified: event.ctrlKey || event.altKey || event.metaKey,
        repeated: event.repeat,
      }
      const deed = keyDeed(press, keyPlace(event.target), letters)
      if (deed === null) return
      event.preventDefault()
      DEEDS[deed](player)
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [player, letters])
}
