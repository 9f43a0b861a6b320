import type { Figure } from '../figure/figure.ts'
import { gridPointBefore } from '../timing/grid.ts'
import { type Schedule, schedule } from '../timing/schedule.ts'
import type { Way } from '../transfer/way.ts'
import type { Beat } from '../units.ts'
import { canFollowItself, joinedBeats } from './canFollowItself.ts'
import { repeatedFigure } from './repeatedFigure.ts'
import type { Steps } from './session.ts'

/** A figure that follows itself without a stop, with what comes before and after what is shown of it. */
export type JoinedSchedule = {
  readonly schedule: Schedule
  /** The actions that are shown: as many rounds as it takes until feet and bars are as at first. */
  readonly steps: Steps
  /** From the first of them on, beats. */
  readonly from: Beat
  /** How long they last. */
  readonly round: Beat
  /** The same way of dancing in every round. A slip is one slip: in the first round that is shown. */
  readonly wayIn: (way: Way) => Way
}

/**
 * A figure as one joined loop; null where it cannot follow itself. As many rounds again go before, so that the first step is
 * entered moving, and one comes after it, so that the last one goes on into the next: what is shown begins as it ends.
 * @param timing index into the figure's timings
 * @throws RangeError when there is no such timing
 */
export function joinedSchedule(figure: Figure, timing: number): JoinedSchedule | null {
  const following = canFollowItself(figure, timing)
  if (!following.can) return null
  const { rounds } = following
  const count = figure.actions.length
  const all = 2 * rounds + 1
  const repeated = schedule(repeatedFigure(figure, timing, all))
  const round = joinedBeats(following)
  const first = rounds * count
  const begins = repeated.actions[first]
  if (begins === undefined) return null
  /** Where the rounds that are shown begin in the music, and in the picture. */
  const [bar, from] = [round, gridPointBefore(begins.moments.leaves, repeated.grid)]
  return {
    schedule: {
      ...repeated,
      // The rounds before are whole bars: the bars that are shown are counted from 1.
      firstCount: repeated.firstCount - bar,
      actions: repeated.actions.map((action) => ({ ...action, written: action.index % count })),
    },
    steps: { first, last: first + first - 1 },
    from,
    round,
    wayIn(way) {
      if (way.kind === 'slip') return { ...way, on: [first + (way.on?.[0] ?? 0)] }
      if (!('on' in way) || way.on === undefined) return way
      return { ...way, on: way.on.flatMap((index) => everyRound(index, count, all)) }
    },
  }
}

const everyRound = (index: number, count: number, rounds: number): number[] =>
  Array.from({ length: rounds }, (_, round) => index + round * count)
