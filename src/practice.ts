import { createStore, type StoreApi } from 'zustand/vanilla'
import { atSpeed } from './dance/speed.ts'
import type { Player } from './player.ts'
import {
  afterLoop,
  back,
  hold,
  type Ladder,
  newLadder,
  type RememberedLadder,
  remembered,
  restored,
  rungOf,
  shortestStep,
  up,
} from './session/ladder.ts'

/** Building up from slow to full tempo. null: nobody does. */
export type PracticeState = { readonly ladder: Ladder | null }

export type Practice = {
  readonly store: StoreApi<PracticeState>
  /** From where the figure was left, or from its slowest; it plays. @param anew from the slowest */
  start(anew?: boolean): void
  stop(): void
  hold(held: boolean): void
  back(): void
  up(): void
  /** Where the figure at hand was left; null: it was not practised. */
  left(): RememberedLadder | null
  close(): void
}

/** Nothing is counted in: the loop itself is entered in tempo. */
const COUNT_IN = 0

/** Loop after loop the tempo climbs, as the ladder says. */
export function createPractice(player: Player): Practice {
  const store = createStore<PracticeState>(() => ({ ladder: null }))
  const lastRungs = new Map<string, RememberedLadder>()
  let at = player.gridBeat()

  const figureNow = (): string => player.store.getState().session.figure
  let practised = figureNow()

  const stand = (ladder: Ladder | null): void => {
    if (ladder !== null) {
      lastRungs.set(practised, remembered(ladder))
      player.setTempo(atSpeed(player.store.getState().lesson.dance, rungOf(ladder).speed))
    }
    store.setState({ ladder })
  }
  const step = (change: (ladder: Ladder) => Ladder): void => {
    const { ladder } = store.getState()
    if (ladder !== null) stand(change(ladder))
  }

  const stops = [
    player.onGrid((now) => {
      // Back at the start while it plays: a loop has been danced.
      const { playing, lesson } = player.store.getState()
      const again = playing && lesson.repeats && now < at
      // Before the tempo changes, which tells of the beat once more.
      at = now
      if (again) step(afterLoop)
    }),
    player.store.subscribe(({ session }) => {
      if (session.figure !== practised && store.getState().ladder !== null) store.setState({ ladder: null })
    }),
  ]

  return {
    store,
    start(anew = false) {
      practised = figureNow()
      const { dance, schedule } = player.store.getState().lesson
      const wishes = { shortest: shortestStep(schedule), countIn: COUNT_IN }
      const kept = anew ? undefined : lastRungs.get(practised)
      stand(kept === undefined ? newLadder(dance, wishes) : restored(dance, kept, wishes))
      if (!player.store.getState().lesson.repeats) player.setLoop(true)
      player.play()
    },
    stop: () => stand(null),
    hold: (held) => step((ladder) => hold(ladder, held)),
    back: () => step(back),
    up: () => step(up),
    left: () => lastRungs.get(figureNow()) ?? null,
    close() {
      for (const stop of stops) stop()
    },
  }
}
