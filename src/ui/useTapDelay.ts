import { useCallback, useEffect, useRef, useState } from 'react'
import type { HeardTap } from '../clock/tapDelay.ts'
import type { Conductor, SoundChoices } from '../conductor.ts'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import type { Player } from '../player.ts'
import { musicPlace } from '../timing/counts.ts'
import { type Seconds, seconds } from '../units.ts'

/** Beats a minute: a delay of some 0.4 s is then well under half a beat. Own judgement. */
const SLOW = 60

/** At which the figure plays in the test: as near to `SLOW` as the dance is played. */
export function testTempo(player: Player): number {
  const { dance } = player.store.getState().lesson
  const { from, to } = playedTempoRange(dance)
  return Math.min(to, Math.max(from, SLOW / dance.beatsPerBar))
}

/** What the test has changed and gives back. */
type Before = {
  readonly barsPerMinute: number
  readonly loop: boolean
  readonly played: boolean
  readonly choices: Partial<SoundChoices>
  /** While it goes on. */
  readonly tempo: number
}

/** Taps on what is heard, against what is shown: beats alone sound, slowly, over and over. */
export function useTapDelay(player: Player, conductor: Conductor) {
  const [taps, setTaps] = useState<readonly HeardTap[]>([])
  const [runs, setRuns] = useState(false)
  const before = useRef<Before | null>(null)

  const end = useCallback(() => {
    const was = before.current
    if (was === null) return
    before.current = null
    setRuns(false)
    const { on, ...choices } = was.choices
    // Whoever has switched it off meanwhile wants to talk.
    conductor.set(on ? choices : was.choices)
    // Somebody has set another tempo, or chosen another figure: that holds.
    const { session, playing } = player.store.getState()
    if (session.barsPerMinute !== was.tempo) return
    player.pause()
    player.setTempo(was.barsPerMinute)
    if (!was.loop) player.setLoop(false)
    // Whoever has paused it wants it to stand.
    if (was.played && playing) player.play(0)
  }, [player, conductor])

  /** @param on whether sound was on before the press */
  const start = useCallback(
    (on: boolean) => {
      const { session, lesson, playing } = player.store.getState()
      const { beats, halves, count } = conductor.store.getState()
      setTaps([])
      player.pause()
      if (!lesson.repeats) player.setLoop(true)
      player.setTempo(testTempo(player))
      conductor.set({ on: true, beats: true, halves: false, count: 'off' })
      player.seek(player.store.getState().lesson.range.from)
      player.play(0)
      // Only now: whoever pauses from here on ends it.
      before.current = {
        barsPerMinute: session.barsPerMinute,
        loop: lesson.repeats,
        played: playing,
        choices: { on, beats, halves, count },
        tempo: player.store.getState().session.barsPerMinute,
      }
      setRuns(true)
    },
    [player, conductor],
  )

  useEffect(() => {
    const stop = player.store.subscribe(({ playing, session }) => {
      const was = before.current
      if (was !== null && (!playing || session.barsPerMinute !== was.tempo)) end()
    })
    return () => {
      stop()
      end()
    }
  }, [player, end])

  /** @param at seconds of the page's clock */
  const tap = (at: Seconds): void => {
    const { secondsPerBeat } = player.clock()
    const { part } = musicPlace(player.store.getState().lesson.schedule, player.beatNow())
    // By what the picture shows now: beats are even in the test.
    const beat = performance.now() / 1000 - part * secondsPerBeat
    const shown = seconds(beat + Math.floor((at - beat) / secondsPerBeat) * secondsPerBeat)
    setTaps((all) => [...all, { at, shown }])
  }
  return { runs, taps, start, end, tap, forget: () => setTaps([]) }
}
