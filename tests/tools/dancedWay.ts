import { dances } from '../../src/dance/dances.ts'
import type { Figure, Foot } from '../../src/figure/figure.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { type Floor, layOutFloor } from '../../src/pose/floor.ts'
import { touchParts } from '../../src/scene/view.ts'
import { schedule } from '../../src/timing/schedule.ts'
import type { Comparison } from '../../src/transfer/comparison.ts'
import { perform } from '../../src/transfer/perform.ts'
import type { Performance } from '../../src/transfer/performance.ts'
import type { Way } from '../../src/transfer/way.ts'
import { shortestAt } from './shortestAt.ts'

/** A figure danced in one way beside its plan, and the floor that it is danced on. */
export type Danced = { readonly comparison: Comparison; readonly performance: Performance; readonly floor: Floor }

/** At the dance’s own tempo, by one who carries the weight across in a comfortable 0.42 s. */
export function dancedWay(figure: Figure, way: Way): Danced {
  const dance = dances[figure.dance]
  const planned = schedule(figure)
  const performance = perform(planned, way, shortestAt(dance, 0.42))
  const ideal = perform(planned, { kind: 'in time' })
  const comparison = { dance, schedule: planned, ideal, panels: [{ way, performance }] }
  return {
    comparison,
    performance,
    floor: layOutFloor(figure, performance.carried, touchParts(comparison), bodyWithFeet(1)),
  }
}

/** The foot that acts, by the changes of weight before it: whoever took weight has changed feet. */
export function footOf({ firstFoot, actions }: Figure, carried: readonly number[], index: number): Foot {
  const changes = actions.filter(({ direction }, k) => k < index && (carried[k] as number) > 0 && direction !== 'hold')
  return changes.length % 2 === 0 ? firstFoot : firstFoot === 'left' ? 'right' : 'left'
}
