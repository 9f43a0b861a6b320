import { useEffect, useRef } from 'react'
import { bySpeed, SPEED_STEP } from '../dance/speed.ts'
import type { Player } from '../player.ts'
import { beatsOnce } from '../session/beatsOnce.ts'
import type { KeyDeed } from '../words/keyWords.ts'
import { keyPlace } from './keyPlace.ts'
import { keyDeed } from './keys.ts'

/** What is a matter of the page alone. */
export type PageDeeds = Readonly<Record<'teach' | 'explain' | 'keys' | 'faults', () => void>>

/** What each deed is to the player. */
const DEEDS: Readonly<Record<Exclude<KeyDeed, keyof PageDeeds>, (player: Player) => void>> = {
  toggle: (player) => player.toggle(),
  'step back': (player) => player.step(-1),
  'step forward': (player) => player.step(1),
  'bar back': (player) => player.step(-stepsABar(player)),
  'bar forward': (player) => player.step(stepsABar(player)),
  start: (player) => player.seek(player.store.getState().lesson.range.from),
  end: (player) => player.seek(player.store.getState().lesson.range.to),
  slower: (player) => changeSpeed(player, -SPEED_STEP),
  faster: (player) => changeSpeed(player, SPEED_STEP),
  steps: (player) => player.toggleSteps(),
  'part from': (player) => loopFrom(player, loopEnds(player).to),
  'part to': (player) => loopFrom(player, loopEnds(player).from),
  names: (player) => (player.store.getState().session.names ? player.hideNames() : player.reveal()),
  'first panel': (player) => togglePanel(player, 0),
  'second panel': (player) => togglePanel(player, 1),
  'third panel': (player) => togglePanel(player, 2),
  'fourth panel': (player) => togglePanel(player, 3),
}

/** Of the part that is looped, or of the figure danced once. */
function loopEnds(player: Player): { readonly from: number; readonly to: number } {
  const { part, once } = player.store.getState().lesson
  return part ?? { from: 0, to: once.schedule.length }
}

/** From the beat now to an end of the loop, or the other way round. */
function loopFrom(player: Player, end: number): void {
  const at = player.gridBeat()
  player.setPart(beatsOnce(player.store.getState().lesson, at, at).from, end)
}

function stepsABar(player: Player): number {
  const { beatsPerBar, grid } = player.store.getState().lesson.schedule
  return Math.round(beatsPerBar / grid)
}

function changeSpeed(player: Player, by: number): void {
  const { session, lesson } = player.store.getState()
  player.setTempo(bySpeed(lesson.dance, session.barsPerMinute, by, SPEED_STEP))
}

/** With names off it would tell which is which. */
function togglePanel(player: Player, panel: number): void {
  const { names, order } = player.store.getState().session
  if (!names) return
  player.setOrder(order.includes(panel) ? order.filter((other) => other !== panel) : [...order, panel])
}

/** The keyboard, for the whole page. @param characters whether single characters do anything */
export function useKeys(player: Player, characters: boolean, page: PageDeeds): void {
  const latest = useRef(page)
  useEffect(() => {
    latest.current = page
  })
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
      const deed = keyDeed(press, keyPlace(event.target), characters)
      if (deed === null) return
      event.preventDefault()
      if (deed === 'teach' || deed === 'explain' || deed === 'keys' || deed === 'faults') latest.current[deed]()
      else DEEDS[deed](player)
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [player, characters])
}
