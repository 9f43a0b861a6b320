import { describe, expect, test } from 'vitest'
import { crankedDriver } from '../src/clock/crankedDriver.ts'
import { atSpeed } from '../src/dance/speed.ts'
import { createPlayer } from '../src/player.ts'
import { createPractice, laddersInMemory } from '../src/practice.ts'
import { rungOf } from '../src/session/ladder.ts'
import { walks } from './tools/exampleFigure.ts'

const WALTZ = walks('waltz', [1, 1, 1], { id: 'waltz' })
const SQQ = walks('foxtrot', [2, 1, 1], { id: 'sqq' })
const WISHES = { from: 0.5, to: 1, steps: 3, loops: 2, countIn: 1 }

function practising(kept = laddersInMemory()) {
  const driver = crankedDriver()
  const player = createPlayer([WALTZ, SQQ], driver)
  const practice = createPractice(player, kept)
  // Alone, whoever is in time needs no bar of waiting.
  player.setOrder([0])
  /** Every beat that was shown with the speed then. */
  const shown: { readonly beat: number; readonly rung: number }[] = []
  const run = (time: number, step = 1 / 60): void => {
    for (let k = 0; k < time / step; k++) {
      driver.crank(step)
      const { ladder } = practice.store.getState()
      shown.push({ beat: player.beatNow(), rung: ladder === null ? -1 : rungOf(ladder).number })
    }
  }
  const speedNow = () => {
    const { session, lesson } = player.store.getState()
    return session.barsPerMinute / atSpeed(lesson.dance, 1)
  }
  return { driver, player, practice, shown, run, speedNow }
}

/** Where the beat went back: from where to where. */
const seams = (shown: readonly { readonly beat: number }[]): number[][] =>
  shown.flatMap(({ beat }, k) => {
    const before = shown[k - 1]?.beat ?? Number.NEGATIVE_INFINITY
    return beat < before ? [[before, beat].map((b) => Math.round(b))] : []
  })

describe('createPractice(player): from slow to full', () => {
  test('each speed is counted in, danced as often as wished, and then the next; the last goes on', () => {
    const { player, practice, shown, run, speedNow } = practising()
    practice.start(WISHES)
    expect(player.store.getState().playing).toBe(true)
    expect(player.beatNow()).toBe(-3)
    expect(speedNow()).toBeCloseTo(0.5, 9)
    run(60)
    // A bar is counted in, two rounds of a bar, and again; a round's end is at beat 2½, its start at −½.
    const round = [2, -0]
    const countIn = [2, -3]
    expect(seams(shown).slice(0, 7)).toEqual([round, countIn, round, countIn, round, round, round])
    expect(shown.at(-1)?.rung).toBe(3)
    expect(speedNow()).toBeCloseTo(1, 9)
  })

  test('held it stays; let go it climbs after the next loop; on a tap only, when it is told to', () => {
    const { practice, run, speedNow } = practising()
    practice.start({ ...WISHES, onTap: true })
    run(40)
    expect(speedNow()).toBeCloseTo(0.5, 9)
    practice.up()
    expect(speedNow()).toBeCloseTo(0.75, 9)
    practice.back()
    expect(speedNow()).toBeCloseTo(0.5, 9)

    practice.start({ ...WISHES, onTap: false }, true)
    practice.hold(true)
    run(40)
    expect(speedNow()).toBeCloseTo(0.5, 9)
    practice.hold(false)
    run(7)
    expect(speedNow()).toBeCloseTo(0.75, 9)
  })

  test('a step back or up begins with counting in', () => {
    const { player, practice, run } = practising()
    practice.start(WISHES)
    run(8)
    practice.up()
    expect(player.beatNow()).toBe(-3)
    // Nobody dances: it waits.
    player.pause()
    practice.back()
    expect(player.store.getState().playing).toBe(false)
    expect(player.beatNow()).toBe(-0.5)
  })

  test('a page that stalls over the end of a loop has danced it all the same', () => {
    const { driver, practice, run, speedNow } = practising()
    practice.start(WISHES)
    // 3 beats of counting in (to −½), then two rounds of 3 beats, at 15 bars a minute: 4 s each.
    run(3 + 7)
    driver.wait(1.5)
    run(1)
    expect(speedNow()).toBeCloseTo(0.75, 9)
  })

  test('another figure ends it; each figure’s last speed is kept, also for the next visit', () => {
    const kept = laddersInMemory()
    const first = practising(kept)
    first.practice.start(WISHES)
    first.practice.up()
    first.player.choose('sqq')
    expect(first.practice.store.getState().ladder).toBeNull()
    expect(first.practice.left()).toBeNull()
    const again = practising(kept)
    expect(again.practice.left()).toMatchObject({ rung: 1, from: 0.5 })
    again.practice.start()
    expect(again.speedNow()).toBeCloseTo(0.75, 9)
    again.practice.start({}, true)
    expect(again.practice.store.getState().ladder).toMatchObject({ rung: 0 })
  })
})
