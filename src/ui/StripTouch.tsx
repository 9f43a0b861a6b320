import { type PointerEvent, useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import type { Player } from '../player.ts'
import type { Strip, StripMoment } from '../scene/strip.ts'
import { momentWords } from '../words/momentWords.ts'
import { along } from './linePlaces.ts'

/** A finger finds a moment within this distance, CSS px. */
const REACH = 40

type Found = { readonly panel: number; readonly moment: StripMoment }

/** The moment nearest to a point of the picture; null when none is near. @param levelOf per cent from the top */
function nearest(
  strip: Strip,
  levelOf: (right: number) => number,
  box: DOMRect,
  at: { readonly x: number; readonly y: number },
): Found | null {
  let found: Found | null = null
  let least = REACH
  for (const { panel, moments } of strip.lines) {
    for (const moment of moments) {
      const x = box.x + (along(strip, moment.danced) / 100) * box.width
      const y = box.y + (levelOf(moment.right) / 100) * box.height
      const distance = Math.hypot(x - at.x, y - at.y)
      if (distance < least) [found, least] = [{ panel, moment }, distance]
    }
  }
  return found
}

type Props = {
  readonly player: Player
  readonly strip: Strip
  readonly levelOf: (right: number) => number
}

/** A touch on a moment of the strip names it. The numbers, which everybody can reach, say the same. */
export function StripTouch({ player, strip, levelOf }: Props) {
  const lesson = useStore(player.store, (state) => state.lesson)
  const tempo = useStore(player.store, (state) => state.session.barsPerMinute)
  const [found, setFound] = useState<Found | null>(null)
  // Of another strip it would say what is not so.
  useEffect(() => {
    if (strip !== null) setFound(null)
  }, [strip])
  const touched = (event: PointerEvent<HTMLButtonElement>): void => {
    const box = event.currentTarget.getBoundingClientRect()
    setFound(nearest(strip, levelOf, box, { x: event.clientX, y: event.clientY }))
  }
  const right = found !== null && along(strip, found.moment.danced) > 50
  return (
    <>
      <button
        type="button"
        className="strip-touch"
        tabIndex={-1}
        aria-hidden="true"
        onPointerDown={(event) => event.preventDefault()}
        onPointerUp={touched}
      />
      {found === null ? null : (
        <p className={right ? 'strip-named strip-named-right' : 'strip-named'} data-at={found.moment.danced}>
          {momentWords(lesson, found.panel, found.moment, secondsPerBeat(lesson.dance, tempo))}
        </p>
      )}
    </>
  )
}
