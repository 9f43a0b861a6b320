import { describe, expect, test } from 'vitest'
import { crankedDriver } from '../src/clock/crankedDriver.ts'
import { createPlayer } from '../src/createPlayer.ts'
import { atSpeed } from '../src/dance/speed.ts'
import { createPractice, laddersInMemory } from '../src/practice.ts'
import { rungOf } from '../src/session/ladder.ts'
import { withJoined } from '../src/session/session.ts'
import { walks } from './tools/exampleFigure.ts'
import { recordingStage } from './tools/recordingStage.ts'

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

  test('held, or stopped, in a speed’s last half beat: that speed goes on', () => {
    for (const deed of ['hold', 'stop', 'neither'] as const) {
      const { player, practice, shown, run, speedNow } = practising()
      practice.start(WISHES)
      // 3 beats of counting in, then two rounds of 3 beats, 4/3 s each: half a beat before their end, about.
      run((3 + 6 - 0.4) * (4 / 3))
      expect(speedNow()).toBeCloseTo(0.75, 9)
      if (deed === 'hold') practice.hold(true)
      if (deed === 'stop') practice.stop()
      if (deed !== 'neither') expect(practice.left()?.rung).toBe(0)
      expect(speedNow()).toBeCloseTo(deed === 'neither' ? 0.75 : 0.5, 9)
      const from = shown.length
      run(5)
      expect(seams(shown.slice(from - 1))[0]).toEqual(deed === 'neither' ? [2, -3] : [2, -0])
      const { ladder } = practice.store.getState()
      expect(ladder === null ? null : rungOf(ladder).number).toBe(deed === 'hold' ? 1 : deed === 'stop' ? null : 2)
      expect(player.store.getState().playing).toBe(true)
      // Let go, it climbs after the loop that is danced then.
      practice.hold(false)
      run(6)
      expect(speedNow()).toBeCloseTo(deed === 'stop' ? 0.5 : deed === 'hold' ? 0.75 : 1, 9)
    }
  })

  test('without sound to the last moment; after it the next speed is there', () => {
    const { driver, player, practice, speedNow } = practising()
    practice.start({ ...WISHES, loops: 1 })
    while (speedNow() < 0.7) driver.crank(1 / 240)
    while (player.clock().anchor.now - driver.now() > 0.01) driver.crank(1 / 240)
    practice.hold(true)
    expect(speedNow()).toBeCloseTo(0.5, 9)
  })

  test('faster than the fastest there is nothing; what is said of an end goes with the figure, and with music', () => {
    const { driver, player, practice, run } = practising()
    practice.start({ ...WISHES, steps: 2 })
    practice.up()
    run(8)
    const at = player.beatNow()
    practice.up()
    expect(player.beatNow()).toBe(at)
    const ended = () => practice.store.getState().ended
    practice.stop()
    expect(ended()).toBe('stopped')
    practice.acknowledge()
    expect(ended()).toBeNull()
    for (const deed of ['figure', 'music'] as const) {
      practice.start(WISHES)
      player.setTempo(20)
      expect(ended()).toBe('tempo')
      if (deed === 'figure') player.choose('sqq')
      else player.playAlong({ one: driver.now(), barsPerMinute: 25 })
      expect(ended()).toBeNull()
      player.playAlong(null)
    }
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

  test('over the seam of two speeds the music goes on: no beat is longer than the slower one’s or shorter than the faster one’s', () => {
    const { driver, player, practice } = practising()
    practice.start(WISHES)
    const slow = player.clock().secondsPerBeat
    const times: number[] = []
    let before = player.beatNow()
    for (let k = 0; k < 4000; k++) {
      driver.crank(1 / 200)
      const at = player.beatNow()
      // A whole beat has come, in a round, in counting in or over the seam.
      if (Math.floor(at + 1e-9) !== Math.floor(before + 1e-9) && Math.abs(at - Math.floor(at)) < 0.1)
        times.push(k / 200)
      before = at
    }
    const fast = player.clock().secondsPerBeat
    expect(fast).toBeLessThan(slow)
    const lasts = times.slice(1).map((time, k) => time - (times[k] as number))
    expect(lasts.length).toBeGreaterThan(15)
    for (const last of lasts) {
      expect(last).toBeLessThan(slow + 0.011)
      expect(last).toBeGreaterThan(fast - 0.011)
    }
  })

  test('a seek, another part, a joined loop: what was not danced from its beginning is no loop', () => {
    const { player, practice, run } = practising()
    player.choose('sqq')
    player.setOrder([0])
    practice.start({ ...WISHES, loops: 1 })
    const rung = () => practice.store.getState().ladder?.rung
    run(4)
    player.seek(player.store.getState().lesson.range.to - 0.5)
    run(1)
    player.seek(2)
    player.seek(0)
    run(0.5)
    player.setPart(0, 2)
    player.change((session) => withJoined(session, true))
    run(0.5)
    expect(rung()).toBe(0)
  })

  test('a tempo that somebody else sets, or music, ends it: nothing untrue is said', () => {
    for (const deed of ['tempo', 'music'] as const) {
      const { player, practice, run, driver } = practising()
      practice.start(WISHES)
      run(4)
      if (deed === 'tempo') player.setTempo(20)
      else player.playAlong({ one: driver.now(), barsPerMinute: 25 })
      expect(practice.store.getState().ladder).toBeNull()
    }
  })

  test('counted in, all stand as they begin, in a joined loop as well', () => {
    const { player, run } = practising()
    const stage = recordingStage(() => {})
    player.change((session) => withJoined(session, true))
    player.show(stage, [{ x: 0, y: 0, width: 400, height: 400 }], false)
    player.play(1)
    stage.drawn.length = 0
    run(1)
    expect(player.beatNow()).toBeLessThan(player.store.getState().lesson.range.from)
    const markers = stage.drawn.map((frames) => frames[0]?.marker)
    expect(markers.length).toBeGreaterThan(50)
    for (const marker of markers) expect(marker).toEqual(markers[0])
  })
})
