import gsap from 'gsap'
import type { FloorAction } from '../../src/pose/floor.ts'
import { pose } from '../../src/pose/pose.ts'
import type { Danced } from './dancedFigure.ts'

/** What a timeline moves: the numbers of a pose, and nothing that a tween cannot do (whether a foot is on the floor). */
export type Moved = {
  readonly left: { x: number; y: number; rotation: number; height: number; load: number }
  readonly right: { x: number; y: number; rotation: number; height: number; load: number }
  readonly marker: { x: number; y: number }
}

/** Metres. */
const HIGHEST = 0.05

/**
 * The same figure as one would build it with gsap: a paused timeline with, for each step, one tween for each foot's
 * place and one for its load, one for the height of the foot that steps and one for the marker. Straight tweens, the cheapest there are.
 * @returns the timeline's setter (beats since the figure's beginning) and what it moves
 */
export function gsapPoses({ floor, curve }: Danced): { at(t: number): void; readonly moved: Moved } {
  gsap.ticker.sleep()
  const numbers = (p: number) => {
    const { left, right, weight } = pose(floor, p)
    const foot = ({ x, y, heading, height, load }: typeof left) => ({ x, y, rotation: heading, height, load })
    return { left: foot(left), right: foot(right), marker: { x: weight.x, y: weight.y } }
  }
  const moved: Moved = numbers(0)
  const timeline = gsap.timeline({ paused: true, defaults: { ease: 'none' } })
  for (let index = 0; index < curve.actions; index++) {
    const [begin, end] = [Math.max(curve.from, curve.departs(index)), curve.arrives(index + 1)]
    const [duration, at] = [end - begin, begin - curve.from]
    const goal = numbers(index + 1)
    for (const foot of ['left', 'right'] as const) {
      const { x, y, rotation, load } = goal[foot]
      timeline.to(moved[foot], { x, y, rotation, duration }, at)
      timeline.to(moved[foot], { load, duration }, at)
    }
    const lifted = moved[(floor.actions[index] as FloorAction).foot]
    timeline.to(lifted, { height: HIGHEST, duration: duration / 2, repeat: 1, yoyo: true }, at)
    timeline.to(moved.marker, { ...goal.marker, duration }, at)
  }
  return { at: (t) => timeline.time(t, true), moved }
}
