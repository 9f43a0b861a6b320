import { useMemo, useRef } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { strip as stripOf } from '../scene/strip.ts'
import { labels } from '../words/labels.ts'
import { showWords } from '../words/showWords.ts'
import { BeatSlider } from './BeatSlider.tsx'
import { BEAT_SLIDER } from './keyPlace.ts'
import { Playhead } from './Playhead.tsx'
import { countsOf, StripCounts, StripGrid } from './StripGrid.tsx'
import { StripPart, StripShades } from './StripPart.tsx'
import { levelOf, StripPicture } from './StripPicture.tsx'
import { StripTouch } from './StripTouch.tsx'
import { useStripRoom } from './useStripRoom.ts'

type Props = {
  readonly player: Player
  /** With words on what is what. */
  readonly explained: boolean
  readonly openKeys: () => void
}

/** The weight over the beats with the slider on the same axis: a beat is on the same pixel in both. */
export function StripView({ player, explained, openKeys }: Props) {
  const lesson = useStore(player.store, (state) => state.lesson)
  const counting = useStore(player.store, (state) => state.session.counting)
  const names = useStore(player.store, (state) => state.session.names)
  const order = useStore(player.store, (state) => state.session.order)
  const strip = useMemo(() => stripOf(lesson, order), [lesson, order])
  const plot = useRef<HTMLDivElement>(null)
  const room = useStripRoom(plot, '.strip-picture')
  const counts = useMemo(() => countsOf(strip, lesson, counting, room.width), [strip, lesson, counting, room.width])
  return (
    <div className="strip">
      <div className="strip-feet" aria-hidden="true">
        {[labels.feet.right, labels.feet.left].map((side) => (
          <span key={side}>
            {side}
            <span className="strip-foot"> {labels.feet.foot}</span>
          </span>
        ))}
      </div>
      <StripPart player={player} />
      <label className="strip-beat" htmlFor={BEAT_SLIDER}>
        {labels.beat}
      </label>
      {/* Music runs from left to right in every language. */}
      <div className="strip-plot" dir="ltr" ref={plot}>
        <StripShades player={player} strip={strip} />
        <StripGrid strip={strip} counts={counts} />
        <StripPicture strip={strip} lesson={lesson} names={names} room={room} />
        <StripTouch player={player} strip={strip} names={names} levelOf={levelOf} />
        <StripCounts strip={strip} counts={counts} />
        <BeatSlider player={player} />
        <Playhead player={player} />
        {explained ? (
          <div className="strip-marks">
            <p className="mark strip-mark">{showWords.marksOfStrip}</p>
            <p className="mark slider-mark">
              {showWords.marksOfSlider}{' '}
              <button type="button" className="quiet-button" onClick={openKeys}>
                {showWords.allKeys}
              </button>
            </p>
          </div>
        ) : null}
      </div>
    </div>
  )
}
