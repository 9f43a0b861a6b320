import { describe, expect, test } from 'vitest'
import { atTempo, beatAt, type Clock, playing, standingClock } from '../../src/clock/clock.ts'
import { beat, seconds } from '../../src/units.ts'

/** How many clocks one holds that were before it. */
const held = ({ former }: Clock): number => (former === undefined ? 0 : 1 + held(former))

describe('changes that are still to come, one after the other', () => {
  const range = { from: beat(0), to: beat(8) }
  const start = playing(standingClock(range, seconds(0.5), beat(8), seconds(0)), seconds(0))

  test('a tempo dragged for a minute, 60 times a second, each heard 0.3 s later: nothing jumps, and little is held', () => {
    let clock = start
    let before = 0
    let [most, worst] = [0, 0]
    for (let k = 1; k < 3600; k++) {
      const now = k / 60
      clock = atTempo(clock, seconds(0.4 + 0.2 * Math.sin(k / 50)), seconds(now + 0.3))
      const at = beatAt(clock, seconds(now))
      const step = (at - before + 8) % 8
      // From the slowest beat to the fastest.
      worst = Math.max(worst, step - 1 / 60 / 0.2, 1 / 60 / 0.6 - step)
      before = at
      most = Math.max(most, held(clock))
    }
    expect(worst).toBeLessThan(1e-9)
    expect(most).toBeLessThan(70)
  })
})
