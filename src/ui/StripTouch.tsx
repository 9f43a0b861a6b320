import { type PointerEvent, useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import type { Player } from '../player.ts'
import type { Strip, StripMoment } from '../scene/strip.ts'
import { beatsOnce } from '../session/beatsOnce.ts'
import { nearestGridPoint } from '../timing/grid.ts'
import { momentWords } from '../words/momentWords.ts'
import { along } from './linePlaces.ts'

/** A finger finds a moment within this distance, CSS px. */
const REACH = 40
/** A finger that moves so far along the strip is no touch any more but chooses a part, CSS px. */
const DRAGS = 12

type Found = { readonly panel: number; readonly moment: StripMoment }
type Chosen = { readonly from: number; readonly to: number }

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
  /** Whether a touch may tell which line is whose. */
  readonly names: boolean
  readonly levelOf: (right: number) => number
}

/**
 * A touch on a moment of the strip names it, and a drag along it chooses the part that is looped. Everybody reaches the
 * same by the numbers, and by the loop's two sliders.
 */
export function StripTouch({ player, strip, names, levelOf }: Props) {
  const lesson = useStore(player.store, (state) => state.lesson)
  const tempo = useStore(player.store, (state) => state.session.barsPerMinute)
  const [found, setFound] = useState<Found | null>(null)
  const [chosen, setChosen] = useState<Chosen | null>(null)
  /** Where the finger came down (the pixel and the beat), and whether it has gone along the strip since. */
  const began = useRef<{ readonly x: number; readonly beat: number; readonly drags: boolean } | null>(null)
  // Of another strip it would say what is not so.
  useEffect(() => {
    if (strip !== null) setFound(null)
  }, [strip])
  const beatUnder = ({ currentTarget, clientX }: PointerEvent<HTMLButtonElement>): number => {
    const { x, width } = currentTarget.getBoundingClientRect()
    const part = Math.min(1, Math.max(0, (clientX - x) / width))
    return nearestGridPoint(strip.from + part * (strip.to - strip.from), lesson.schedule.grid)
  }
  /** The part from where the finger came down to where it is; null while it is still a touch. */
  const dragged = (event: PointerEvent<HTMLButtonElement>): Chosen | null => {
    const { current } = began
    if (current === null) return null
    if (!current.drags && Math.abs(event.clientX - current.x) < DRAGS) return null
    began.current = { ...current, drags: true }
    const [from, to] = [current.beat, beatUnder(event)].sort((a, b) => a - b) as [number, number]
    return { from, to }
  }
  const drop = (): void => {
    began.current = null
    setChosen(null)
  }
  const down = (event: PointerEvent<HTMLButtonElement>): void => {
    event.preventDefault()
    if (!event.isPrimary || event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    began.current = { x: event.clientX, beat: beatUnder(event), drags: false }
  }
  const move = (event: PointerEvent<HTMLButtonElement>): void => {
    if (!event.isPrimary) return
    const part = dragged(event)
    if (part === null) return
    setFound(null)
    setChosen(part)
  }
  const up = (event: PointerEvent<HTMLButtonElement>): void => {
    if (began.current === null || !event.isPrimary) return
    // By the event itself: what was seen last may be behind a quick finger.
    const part = dragged(event)
    if (part !== null) {
      const { from, to } = beatsOnce(lesson, part.from, part.to)
      if (to > from) player.setPart(from, to)
    } else if (names) {
      const box = event.currentTarget.getBoundingClientRect()
      setFound(nearest(strip, levelOf, box, { x: event.clientX, y: event.clientY }))
    }
    drop()
  }
  const right = found !== null && along(strip, found.moment.danced) > 50
  return (
    <>
      <button
        type="button"
        className="strip-touch"
        tabIndex={-1}
        aria-hidden="true"
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={drop}
        onLostPointerCapture={drop}
      />
      {chosen === null ? null : (
        <div
          className="strip-chosen"
          style={{ left: `${along(strip, chosen.from)}%`, right: `${100 - along(strip, chosen.to)}%` }}
        />
      )}
      {found === null || !names ? null : (
        <p className={right ? 'strip-named strip-named-right' : 'strip-named'} data-at={found.moment.danced}>
          {momentWords(lesson, found.panel, found.moment, secondsPerBeat(lesson.dance, tempo))}
        </p>
      )}
    </>
  )
}
