import { musicPlace } from '../timing/counts.ts'
import { gridPoints } from '../timing/grid.ts'
import { clickFor } from './clickFor.ts'
import type { Tick } from './tick.ts'
import type { Sounded, TickChoices } from './ticksOf.ts'
import { wordFor } from './wordFor.ts'

const NEAR = 1e-9

/**
 * What is heard while it is counted in, earliest first: the clicks as in the round, and the numbers of the beats, which the
 * screen shows as well; with their ands where one counts in half beats. Slows and quicks do not begin before the steps do.
 * @param from where counting in begins, a beat before the round's start
 * @returns ticks in beats from `from` on; all lie before the round's start
 */
export function countInTicks(
  { schedule, range }: Pick<Sounded, 'schedule' | 'range'>,
  from: number,
  choices: TickChoices,
): Tick[] {
  const { counting, count, ands = true } = choices
  // Beats of the music, which begin on whole numbers from the first count of its bar on.
  const shift = schedule.firstCount - 1
  return gridPoints(from + shift, range.from + shift - 2 * NEAR, 0.5).flatMap((point) => {
    const place = musicPlace(schedule, point - shift)
    const onBeat = place.part < NEAR
    const said = onBeat ? String(place.count) : counting === 'half beats' && count === 'counting' && ands ? '&' : ''
    const tick: Tick = {
      at: Math.max(0, point - shift - from),
      click: clickFor(place.count, onBeat, choices),
      say: count === 'off' ? null : wordFor(said),
    }
    return tick.click === null && tick.say === null ? [] : [tick]
  })
}
