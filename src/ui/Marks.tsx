import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { type Mark, type MarkPlace, markPlaces } from '../scene/markPlaces.ts'
import { tellingBeat } from '../session/tellingBeat.ts'
import { showWords } from '../words/showWords.ts'
import { useEscape } from './useEscape.ts'

type Props = { readonly player: Player; readonly close: () => void }

/** As sheet.css has them: a letter's width on average and a line's height, and the frame around them, CSS px at 16 px a rem. */
const LETTER = 7.4
const LINE = 18
const FRAME = 14

type Placed = MarkPlace & { readonly panel: number }

function rem(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16
}

/** Each mark once, in the panel where it is seen first. */
function placesNow(player: Player): Placed[] {
  const grown = rem()
  const size = (mark: Mark) => ({
    width: (showWords.marks[mark].length * LETTER + FRAME) * grown,
    height: (LINE + FRAME / 2) * grown,
  })
  const said = new Set<Mark>()
  return player.pictureNow().flatMap(({ rect, picture, frame }, panel) =>
    markPlaces(picture, frame, rect, size, said).map((place) => {
      said.add(place.mark)
      const { at, box } = place
      return {
        ...place,
        panel,
        at: { x: at.x + rect.x, y: at.y + rect.y },
        box: { ...box, x: box.x + rect.x, y: box.y + rect.y },
      }
    }),
  )
}

/** Says on the picture itself what its marks are. It follows the half beats, and gives way while the figure plays. */
export function Marks({ player, close }: Props) {
  useEscape(close)
  const [places, setPlaces] = useState<readonly Placed[]>([])
  const playing = useStore(player.store, (state) => state.playing)
  // The marks of a picture that moves cannot be pointed at, and at the start most are not there yet.
  useEffect(() => {
    const { lesson, playing: played } = player.store.getState()
    player.pause()
    if (player.beatNow() <= lesson.range.from) player.seek(tellingBeat(lesson))
    // Whoever only wanted to look goes on as before.
    return () => {
      if (played) player.play()
    }
  }, [player])
  useEffect(() => {
    const place = (): void => {
      if (!player.store.getState().playing) setPlaces(placesNow(player))
    }
    place()
    const stops = [player.onGrid(place), player.store.subscribe(place), player.onShown(place)]
    return () => {
      for (const stop of stops) stop()
    }
  }, [player])
  return (
    <div className="marks">
      {playing ? null : (
        <>
          <svg className="marks-lines" aria-hidden="true">
            {places.map(({ mark, at, box }) => (
              <line key={mark} x1={at.x} y1={at.y} x2={box.x} y2={box.y} />
            ))}
          </svg>
          {places.map(({ mark, box }) => (
            <span key={mark} className="mark" style={{ left: `${box.x}px`, top: `${box.y}px` }}>
              {showWords.marks[mark]}
            </span>
          ))}
        </>
      )}
    </div>
  )
}
