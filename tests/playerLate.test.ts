import { describe, expect, test } from 'vitest'
import { crankedDriver } from '../src/clock/crankedDriver.ts'
import { createPlayer } from '../src/createPlayer.ts'
import { withJoined } from '../src/session/session.ts'
import { seconds } from '../src/units.ts'
import { walks } from './tools/exampleFigure.ts'

describe('createPlayer(figures, driver): what sounds cannot be changed at once', () => {
  test('joined while what sounds goes on for 0.3 s: the beat of the bar goes on, in the numbers of what is shown', () => {
    const driver = crankedDriver(5)
    const player = createPlayer([walks('foxtrot', [2, 1, 1])], { ...driver, next: () => seconds(driver.now() + 0.3) })
    player.play()
    driver.crank(0.3)
    for (const joined of [true, false, true]) {
      driver.crank(1.1)
      const { secondsPerBeat } = player.clock()
      const [before, { beatsPerBar }] = [player.beatNow(), player.store.getState().lesson.schedule]
      player.change((session) => withJoined(session, joined))
      for (let frame = 0; frame < 40; frame++) {
        const { range } = player.store.getState().lesson
        expect(player.beatNow()).toBeGreaterThanOrEqual(range.from)
        const on = player.beatNow() - before - (frame * 0.01) / secondsPerBeat
        expect(Math.abs(on / beatsPerBar - Math.round(on / beatsPerBar))).toBeLessThan(1e-9)
        driver.crank(0.01)
      }
    }
  })
})
