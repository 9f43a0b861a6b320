import type { Figure, Foot } from '../figure/figure.ts'

export const otherFoot = (foot: Foot): Foot => (foot === 'left' ? 'right' : 'left')

/**
 * The foot that acts in each action: the next free foot follows the weight that was carried, not the counts. Part weight
 * is a change of foot; none (a tap, a hold) is not.
 */
export function actingFeet({ actions, firstFoot }: Figure, carried: readonly number[]): Foot[] {
  let foot = firstFoot
  return actions.map((action, index) => {
    const acting = foot
    if ((carried[index] as number) > 0 && action.direction !== 'hold') foot = otherFoot(foot)
    return acting
  })
}
