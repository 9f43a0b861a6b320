import { useCallback, useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import type { Beat } from '../units.ts'
import { countWords } from '../words/countWords.ts'
import { labels } from '../words/labels.ts'
import { stageWords } from '../words/stageWords.ts'
import { BEAT_SLIDER } from './keyPlace.ts'
import { panelName } from './panelName.ts'
import { useOnGrid } from './useOnGrid.ts'
import { useScrub } from './useScrub.ts'

/** The scrubber: a native slider that stands on grid points only. While playing, just its place is written. */
export function BeatSlider({ player }: { readonly player: Player }) {
  const [first] = useState(() => player.gridBeat())
  const slider = useRef<HTMLInputElement>(null)
  const held = useScrub(player, slider)
  const lesson = useStore(player.store, (state) => state.lesson)
  const order = useStore(player.store, (state) => state.session.order)
  const names = useStore(player.store, (state) => state.session.names)
  const { range, schedule } = lesson

  const say = useCallback(() => {
    const at = player.gridBeat()
    const panels = names
      ? order.map((panel, place) => ({
          name: panelName(lesson, panel, place, true).replace(/:.*/, ''),
          stage: stageWords(lesson, panel, at),
        }))
      : []
    slider.current?.setAttribute('aria-valuetext', labels.beatValue(countWords(lesson, at), panels))
  }, [player, lesson, order, names])

  const write = useCallback(
    (at: Beat) => {
      const element = slider.current
      if (element === null) return
      if (!held.current && element.valueAsNumber !== at) element.valueAsNumber = at
      if (!player.store.getState().playing) say()
    },
    [player, held, say],
  )
  useOnGrid(player, write)

  useEffect(() => {
    let was = player.store.getState().playing
    return player.store.subscribe(({ playing }) => {
      if (was && !playing) say()
      // The line that glides is the beat then; a large thumb behind it would be a second one.
      if (was !== playing) slider.current?.toggleAttribute('data-playing', playing)
      was = playing
    })
  }, [player, say])

  return (
    <input
      ref={slider}
      id={BEAT_SLIDER}
      className="beat-slider"
      type="range"
      min={range.from}
      max={range.to}
      step={schedule.grid}
      defaultValue={first}
      onChange={(event) => {
        player.seek(event.currentTarget.valueAsNumber)
        say()
      }}
    />
  )
}
