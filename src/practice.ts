import { createStore, type StoreApi } from 'zustand/vanilla'
import { atSpeed } from './dance/speed.ts'
import type { Player } from './player.ts'
import {
  afterLoop,
  back,
  hold,
  type Ladder,
  type LadderWishes,
  newLadder,
  type RememberedLadder,
  remembered,
  restored,
  rungOf,
  shortestStep,
  up,
} from './session/ladder.ts'
import type { CountInBars } from './timing/countIn.ts'

/** Beats that are one but for rounding. */
const NEAR = 1e-9

/** Bars to be counted in before the loop that comes. */
const countInOf = (ladder: Ladder): CountInBars => (rungOf(ladder).countIn >= 2 ? 2 : 1)

/** Building up from slow to full tempo. */
export type PracticeState = {
  /** null: nobody does. */
  readonly ladder: Ladder | null
  /** Why nobody does any more, until it is acknowledged: another tempo was set, or it was stopped; null: nothing to say. */
  readonly ended: 'tempo' | 'stopped' | null
}

export type Practice = {
  readonly store: StoreApi<PracticeState>
  /** From where the figure was left, or from its slowest; it plays. @param anew from the slowest, as wished */
  start(wishes?: LadderWishes, anew?: boolean): void
  /** Nobody climbs any more; at the tempo at hand it goes on. */
  stop(): void
  /** What was said of its end has been read. */
  acknowledge(): void
  /** From the slowest again, as it was planned. */
  again(): void
  hold(held: boolean): void
  back(): void
  up(): void
  /** Where the figure at hand was left; null: it was not practised. */
  left(): RememberedLadder | null
  close(): void
}

/** What is left of earlier practice, by the figure's id; and where it is put. */
export type KeptLadders = {
  readonly read: (figure: string) => unknown
  readonly write: (figure: string, ladder: RememberedLadder) => void
}

/** Kept as long as the page is open. */
export function laddersInMemory(): KeptLadders {
  const kept = new Map<string, RememberedLadder>()
  return { read: (figure) => kept.get(figure), write: (figure, ladder) => kept.set(figure, ladder) }
}

/** Loop after loop the tempo climbs, as the ladder says. */
export function createPractice(player: Player, kept: KeptLadders = laddersInMemory()): Practice {
  const store = createStore<PracticeState>(() => ({ ladder: null, ended: null }))
  /** The grid point told last in this run, and the one at which it began; null: where it goes on is not known yet. */
  let run: { readonly began: number; readonly at: number } | null = null
  /** The loop that goes on has been counted already, shortly before its end. */
  let counted = false
  /** Where the next speed has been asked for in this loop: the ladder as it was; else null. */
  let climbsFrom: Ladder | null = null
  /** What happens is our own doing. */
  let ours = false

  const figureNow = (): string => player.store.getState().session.figure
  let practised = figureNow()

  const tempoOf = (ladder: Ladder): number => atSpeed(player.store.getState().lesson.dance, rungOf(ladder).speed)
  const stand = (ladder: Ladder | null): void => {
    if (ladder !== null) kept.write(practised, remembered(ladder))
    store.setState({ ladder, ended: null })
  }
  const byUs = <Result>(deed: () => Result): Result => {
    ours = true
    try {
      return deed()
    } finally {
      ours = false
    }
  }
  /** From its first loop on, counted in; where nobody dances it waits for that. */
  const begin = (ladder: Ladder, plays: boolean): void =>
    byUs(() => {
      stand(ladder)
      player.pause()
      player.setTempo(tempoOf(ladder))
      player.seek(player.store.getState().lesson.range.from)
      if (plays) player.play(countInOf(ladder))
    })
  const step = (change: (ladder: Ladder) => Ladder): void => {
    const { ladder } = store.getState()
    if (ladder === null) return
    const next = change(ladder)
    // At the highest there is none above.
    if (next !== ladder) begin(next, player.store.getState().playing)
  }

  /** A loop is over, or as good as over. @param seam whether the next one has not begun yet, so that it can be counted in */
  const loopDone = (ladder: Ladder, seam: boolean): void =>
    byUs(() => {
      const next = afterLoop(ladder)
      stand(next)
      if (next.rung === ladder.rung) return
      if (seam) player.nextRound(tempoOf(next), countInOf(next))
      else player.setTempo(tempoOf(next))
      climbsFrom = seam ? ladder : null
    })

  /** Whether the next speed, which was asked for already, could be taken back; then the loop that is danced is one of this. */
  const keepSpeed = (): Ladder | null => {
    const was = climbsFrom
    climbsFrom = null
    return was !== null && byUs(() => player.keepRound()) ? was : null
  }

  const follow = (now: number): void => {
    const { playing, lesson } = player.store.getState()
    const { ladder } = store.getState()
    const { range, round, repeats, schedule } = lesson
    if (!playing || !repeats || ladder === null) {
      run = null
      return
    }
    const before = run
    const isBack = before !== null && now < before.at
    run = { began: before === null ? now : isBack ? range.from : before.began, at: now }
    // Only a loop that was danced from its beginning is one.
    const isWhole = before !== null && before.began <= range.from + NEAR
    if (isBack) {
      // Back at the start. A page that stalled over the end tells of nothing before.
      if (!counted && isWhole) loopDone(ladder, false)
      counted = false
      climbsFrom = null
    } else if (!counted && isWhole && now >= range.from + round - schedule.grid - NEAR) {
      counted = true
      loopDone(ladder, true)
    }
  }

  const stops = [
    player.onGrid(follow),
    player.store.subscribe((state, before) => {
      const { session, lesson, playing, along } = state
      // Somewhere else, or in something else: what was danced of this loop does not count.
      if (!playing || lesson !== before.lesson || session.beat !== before.session.beat) {
        run = null
        counted = false
        climbsFrom = null
      }
      const { ladder, ended } = store.getState()
      if (ended !== null && (session.figure !== practised || along !== null)) store.setState({ ended: null })
      if (ladder === null || ours) return
      // Another figure, a tempo that somebody else has set, music: nobody climbs any more.
      const isOurs =
        session.figure === practised && along === null && Math.abs(session.barsPerMinute - tempoOf(ladder)) < NEAR
      const isSaid = session.figure === practised && along === null
      if (!isOurs) store.setState({ ladder: null, ended: isSaid ? 'tempo' : null })
    }),
  ]

  return {
    store,
    start(wishes = {}, anew = false) {
      practised = figureNow()
      const { dance, schedule, repeats } = player.store.getState().lesson
      const usual = { shortest: shortestStep(schedule), ...wishes }
      if (!repeats) player.setLoop(true)
      begin(anew ? newLadder(dance, usual) : restored(dance, kept.read(practised), usual), true)
    },
    stop() {
      const kept = keepSpeed()
      if (kept !== null) stand(kept)
      if (store.getState().ladder !== null) store.setState({ ladder: null, ended: 'stopped' })
    },
    acknowledge: () => store.setState({ ended: null }),
    again() {
      const { ladder } = store.getState()
      if (ladder !== null) begin({ ...ladder, rung: 0, done: 0, held: false }, true)
    },
    hold(held) {
      const { ladder } = store.getState()
      if (ladder === null) return
      const kept = held ? keepSpeed() : null
      stand(kept === null ? hold(ladder, held) : afterLoop(hold(kept, held)))
    },
    back: () => step(back),
    up: () => step(up),
    left() {
      const { dance } = player.store.getState().lesson
      const left = kept.read(figureNow())
      return left === undefined ? null : remembered(restored(dance, left))
    },
    close() {
      for (const stop of stops) stop()
    },
  }
}
