import { useMemo } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { strip as stripOf } from '../scene/strip.ts'
import { labels } from '../words/labels.ts'
import { BeatSlider } from './BeatSlider.tsx'
import { BEAT_SLIDER } from './keyPlace.ts'
import { Playhead } from './Playhead.tsx'
import { StripCounts, StripGrid } from './StripGrid.tsx'
import { StripPicture } from './StripPicture.tsx'

/** The weight over the beats with the slider on the same axis: a beat is on the same pixel in both. */
export function StripView({ player }: { readonly player: Player }) {
  const lesson = useStore(player.store, (state) => state.lesson)
  const counting = useStore(player.store, (state) => state.session.counting)
  const names = useStore(player.store, (state) => state.session.names)
  const strip = useMemo(() => stripOf(lesson), [lesson])
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
      <label className="strip-beat" htmlFor={BEAT_SLIDER}>
        {labels.beat}
      </label>
      {/* Music runs from left to right in every language. */}
      <div className="strip-plot" dir="ltr">
        <StripGrid strip={strip} />
        <StripPicture strip={strip} lesson={lesson} names={names} />
        <StripCounts strip={strip} lesson={lesson} counting={counting} />
        <BeatSlider player={player} />
        <Playhead player={player} />
      </div>
    </div>
  )
}
