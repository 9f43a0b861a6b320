import { useEffect, useRef } from 'react'
import type { Clock } from '../clock/clock.ts'
import type { Player } from '../player.ts'
import { playheadTiming } from './playheadTiming.ts'

/** Two places closer than this, in milliseconds of playing, are one: a fraction of a frame. */
const SAME = 4

/**
 * The line over the strip. While playing the browser moves it by itself, in step with the clock: the page is written only
 * when somebody plays, pauses, seeks or changes the tempo, and set right at a grid point should it ever be off.
 */
export function Playhead({ player }: { readonly player: Player }) {
  const home = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const line = home.current
    if (line === null) return
    let animation: Animation | null = null

    /** Milliseconds in which the beat still stands: with sound on it goes on when something can be heard. */
    const untilItMoves = ({ anchor }: Clock): number => Math.max(0, anchor.now - player.now()) * 1000

    /** It is counted in: the line waits at its start. */
    let waits = false

    const anchor = (): void => {
      const clock = player.clockNow()
      const { duration, until, iterations, at } = playheadTiming(clock)
      waits = player.beatNow() < clock.range.from
      animation?.cancel()
      animation = line.animate(
        { transform: ['translateX(0%)', `translateX(${until * 100}%)`] },
        { duration, iterations, fill: 'both', easing: 'linear' },
      )
      // By its start, not by its place: a start holds although the first frame comes a little later.
      if (clock.playing) animation.startTime = performance.now() + untilItMoves(clock) - at(player.beatNow())
      else {
        animation.pause()
        animation.currentTime = at(player.beatNow())
      }
    }
    const setRight = (): void => {
      const clock = player.clockNow()
      if (!clock.playing || typeof animation?.startTime !== 'number') return
      if (waits !== player.beatNow() < clock.range.from) {
        anchor()
        return
      }
      const { duration, at } = playheadTiming(clock)
      const off = performance.now() + untilItMoves(clock) - at(player.beatNow()) - animation.startTime
      if (Math.abs(off - Math.round(off / duration) * duration) > SAME) anchor()
    }

    anchor()
    const stops = [player.store.subscribe(anchor), player.onGrid(setRight)]
    // Browsers may let it run on by the width that was.
    const resized = new ResizeObserver(anchor)
    resized.observe(line)
    return () => {
      resized.disconnect()
      for (const stop of stops) stop()
      animation?.cancel()
    }
  }, [player])
  return (
    <div className="playhead" aria-hidden="true">
      <div className="playhead-run" ref={home} />
    </div>
  )
}
