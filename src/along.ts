import { createStore, type StoreApi } from 'zustand/vanilla'
import { readAs, type SteadyBeat, steadyTempo } from './clock/steadyTempo.ts'
import { noTaps, nudged, type Taps, type TapTempo, tapped } from './clock/tapTempo.ts'
import { playedTempoRange } from './dance/playedTempoRange.ts'
import type { Player } from './player.ts'
import { type Seconds, seconds } from './units.ts'

/** How a tap is read: a beat, two of them, or half of one. */
export type Times = 1 | 2 | 0.5

export type AlongState = {
  readonly taps: Taps
  readonly times: Times
  /** What was tapped, before it is read as twice or half as fast; null: nothing yet. */
  readonly tapped: TapTempo | null
  /** The music's beat, in seconds of the page's clock. */
  readonly beat: TapTempo | null
}

/** The music in the room, as it is tapped. */
export type Along = {
  readonly store: StoreApi<AlongState>
  /** @param at seconds of the page's clock */
  tap(at: Seconds): void
  /** @param halfBeats later is positive */
  nudge(halfBeats: number): void
  read(times: Times): void
  /** Whether the dance is played at the tempo that was tapped. */
  canStart(): boolean
  /** With the music from its next bar on. Without a tempo, or one at which it is played, nothing happens. */
  start(): void
  stop(): void
  close(): void
}

/** So long after a pause it still begins with the music, in seconds; then nobody knows where that is. Own judgement. */
const REMEMBERED = 30
/** So often the two clocks are compared. */
const LOOKS = 5

type Later = (seconds: number, call: () => void) => () => void
const onTimer: Later = (wait, call) => {
  const timer = setTimeout(call, wait * 1000)
  return () => clearTimeout(timer)
}

/**
 * Keeps tempo and bars of the picture to those that are tapped. While it plays along, another run of taps mends it: its first
 * tap is a one again, and nudge and reading stay. Otherwise a new run is new music.
 * @param page the page's clock, in which taps are timed, seconds
 */
export function createAlong(
  player: Player,
  page: () => number = () => performance.now() / 1000,
  later: Later = onTimer,
): Along {
  const store = createStore<AlongState>(() => ({ taps: noTaps, times: 1, tapped: null, beat: null }))
  let steady: SteadyBeat | null = null
  /** What the picture was given last: it holds until other taps say more. */
  let followed: TapTempo | null = null
  let forget: (() => void) | null = null

  const barsOf = ({ beatsPerMinute }: TapTempo): number =>
    beatsPerMinute / player.store.getState().lesson.dance.beatsPerBar
  const isPlayed = (beat: TapTempo): boolean => {
    const { from, to } = playedTempoRange(player.store.getState().lesson.dance)
    return barsOf(beat) >= from && barsOf(beat) <= to
  }
  /** The page's time as the driver's: what is seen then. The two differ where something is heard. */
  const asSeen = (time: Seconds): Seconds => {
    // A page may be held up between the one and the other: the quickest of a few looks tells.
    const looks = Array.from({ length: LOOKS }, () => {
      const before = page()
      const now = player.now()
      const after = page()
      return { took: after - before, ahead: now - (before + after) / 2 }
    })
    const { ahead } = looks.reduce((best, look) => (look.took < best.took ? look : best))
    return seconds(time + ahead)
  }
  const follow = (beat: TapTempo): void => {
    followed = beat
    player.playAlong({ one: asSeen(beat.one), barsPerMinute: barsOf(beat) })
  }

  const found = (taps: Taps, times: Times): void => {
    const said = steadyTempo(steady, taps)
    steady = said === null ? steady : said.steady
    const tapped = said?.tempo ?? null
    const beat = tapped === null ? null : readAs(tapped, times, taps.nudge)
    store.setState({ taps, times, tapped, beat })
    if (beat === null) return
    if (player.store.getState().along !== null && isPlayed(beat)) follow(beat)
    else player.setTempo(barsOf(beat))
  }

  const stops = [
    player.store.subscribe(({ playing, along }) => {
      const waits = along !== null && !playing
      if (waits && forget === null) forget = later(REMEMBERED, () => player.playAlong(null))
      if (waits || forget === null) return
      forget()
      forget = null
    }),
  ]

  return {
    store,
    tap(at) {
      const { taps, times } = store.getState()
      const next = tapped(taps, at)
      const isNew = next.times.length === 1
      if (!isNew) found(next, times)
      else if (player.store.getState().along !== null) found(nudged(next, taps.nudge), times)
      else {
        steady = null
        found(next, 1)
      }
    },
    nudge(halfBeats) {
      const { taps, times } = store.getState()
      found(nudged(taps, halfBeats), times)
      // Another run has only begun: it says nothing yet.
      if (store.getState().beat !== null || followed === null || player.store.getState().along === null) return
      follow({ ...followed, one: seconds(followed.one + (halfBeats / 2) * followed.secondsPerBeat) })
    },
    read(times) {
      found(store.getState().taps, times)
    },
    canStart() {
      const { beat } = store.getState()
      return beat !== null && isPlayed(beat)
    },
    start() {
      const { beat } = store.getState()
      if (beat !== null && isPlayed(beat)) follow(beat)
    },
    stop: () => player.playAlong(null),
    close() {
      for (const stop of stops) stop()
      forget?.()
      forget = null
    },
  }
}
