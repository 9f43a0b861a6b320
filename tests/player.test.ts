import { describe, expect, test } from 'vitest'
import { crankedDriver } from '../src/clock/crankedDriver.ts'
import { createPlayer, type Player } from '../src/player.ts'
import type { PanelFrame } from '../src/scene/panelPicture.ts'
import { panelView } from '../src/scene/panelView.ts'
import { viewOf } from '../src/scene/view.ts'
import { walks } from './tools/exampleFigure.ts'
import { recordingStage } from './tools/recordingStage.ts'

const SQQ = walks('foxtrot', [2, 1, 1], { id: 'sqq' })
const WALTZ = walks('waltz', [1, 1, 1], { id: 'waltz' })
const RECTS = [0, 1, 2].map((k) => ({ x: k * 400, y: 0, width: 380, height: 420 }))

function onStage(figures = [SQQ, WALTZ]) {
  const driver = crankedDriver(5)
  const player = createPlayer(figures, driver)
  const beats: number[] = []
  const stage = recordingStage(() => beats.push(player.beatNow()))
  player.show(stage, RECTS, false)
  return { driver, player, stage, beats }
}

/** What the panels look like at a beat, made from nothing. */
function fresh(player: Player, at: number): PanelFrame[] {
  const { session, lesson } = player.store.getState()
  return session.order.map((index) => panelView(lesson, index, viewOf(lesson, 380, 420), session.names).frameAt(at))
}

const places = (frames: readonly PanelFrame[]) =>
  frames.map(({ left, right, marker, ghost }) => ({ left, right, marker, ghost }))

describe('createPlayer(figures, driver): any order, any frame rate, the same picture at the same beat', () => {
  test.each([24, 60, 144])(
    'at %s frames a second, with seeks, a loop’s seam and a change of tempo between frames',
    (rate) => {
      const { driver, player, stage, beats } = onStage()
      player.play()
      for (let frame = 0; frame < rate * 12; frame++) {
        driver.crank(1 / rate)
        if (frame === rate) player.setTempo(21.5)
        if (frame === 2 * rate) player.seek(3)
        if (frame === 3 * rate) player.seek(0.5)
        if (frame === 4 * rate) driver.wait(3.3)
        if (frame === 5 * rate) player.setTempo(36)
      }
      expect(stage.drawn.length).toBeGreaterThan(rate * 12)
      expect(beats.some((at, k) => at < (beats[k - 1] ?? at) - 5)).toBe(true)
      for (let k = 0; k < stage.drawn.length; k += 7) {
        expect(places(stage.drawn[k] ?? [])).toEqual(places(fresh(player, beats[k] as number)))
      }
    },
  )

  test('a change of tempo keeps the beat', () => {
    const { driver, player } = onStage()
    player.play()
    driver.crank(1)
    const at = player.beatNow()
    player.setTempo(10)
    expect(player.beatNow()).toBe(at)
  })

  test('at the seam all panels cut together, to the start', () => {
    const { driver, player, stage } = onStage()
    player.seek(7)
    player.play()
    // Foxtrot at 29 bars a minute: 116 beats a minute; half a beat to the seam.
    driver.crank((0.5 * 60) / 116 + 1e-9)
    expect(player.beatNow()).toBeCloseTo(-0.5, 6)
    const still = fresh(player, -0.5)
    for (const [k, { marker }] of (stage.drawn.at(-1) ?? []).entries()) {
      expect(marker.x).toBeCloseTo(still[k]?.marker.x as number, 6)
      expect(marker.y).toBeCloseTo(still[k]?.marker.y as number, 6)
    }
  })
})

describe('createPlayer(figures, driver): what people do', () => {
  test('opens on the first figure, standing at its start', () => {
    const { player, stage, driver } = onStage()
    expect(player.store.getState().lesson.figure.id).toBe('sqq')
    expect(player.beatNow()).toBe(-0.5)
    expect(driver.running).toBe(false)
    expect(stage.drawn).toHaveLength(1)
  })
  test('pause stops on the nearest half beat and asks for no more frames', () => {
    const { driver, player } = onStage()
    player.play()
    driver.crank((1.2 * 60) / 116)
    player.pause()
    expect(player.beatNow()).toBe(0.5)
    expect(player.store.getState().session.beat).toBe(0.5)
    expect(driver.running).toBe(false)
  })
  test('without a loop it pauses by itself at the end, and plays again from the start', () => {
    const { driver, player } = onStage()
    player.setLoop(false)
    player.play()
    driver.crank(60)
    expect([player.beatNow(), player.store.getState().playing, driver.running]).toEqual([4, false, false])
    player.play()
    expect(player.beatNow()).toBe(-0.5)
  })
  test('step goes by half beats, stops what plays, and is held inside the range', () => {
    const { driver, player } = onStage()
    player.play()
    driver.crank((1 * 60) / 116 + 1e-6)
    player.step(1)
    expect([player.beatNow(), player.store.getState().playing]).toEqual([1, false])
    player.step(-99)
    expect(player.beatNow()).toBe(-0.5)
  })
  test('seek locks to half beats', () => {
    const { player } = onStage()
    player.seek(1.3)
    expect(player.beatNow()).toBe(1.5)
  })
  test('onGrid tells each half beat once while playing', () => {
    const { driver, player } = onStage()
    const told: number[] = []
    player.onGrid((at) => told.push(at))
    player.play()
    for (let frame = 0; frame < 200; frame++) driver.crank((4 * 60) / 116 / 200)
    expect(told).toEqual([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5].slice(0, told.length))
    expect(told.length).toBeGreaterThanOrEqual(7)
  })
  test('frames while playing set no panel anew and tell the interface nothing', () => {
    const { driver, player, stage } = onStage()
    player.play()
    const [set, told] = [stage.set, { count: 0 }]
    player.store.subscribe(() => told.count++)
    for (let frame = 0; frame < 300; frame++) driver.crank(1 / 60)
    expect(stage.set).toBe(set)
    expect(told.count).toBe(0)
  })
  test('another figure stops the play and stands at its own start', () => {
    const { driver, player } = onStage()
    player.play()
    driver.crank(1)
    player.choose('waltz')
    expect(player.store.getState()).toMatchObject({ playing: false, lesson: { figure: { id: 'waltz' } } })
    expect(player.beatNow()).toBe(-0.5)
    expect(player.store.getState().session.barsPerMinute).toBe(29)
  })
  test('how late and how early are seen at once', () => {
    const { player, stage } = onStage()
    player.seek(0)
    const before = stage.drawn.at(-1)?.[1]?.marker
    player.setLate(0)
    expect(stage.drawn.at(-1)?.[1]?.marker).not.toEqual(before)
    expect(stage.drawn.at(-1)?.[1]?.marker).toEqual(stage.drawn.at(-1)?.[0]?.marker)
  })
  test('names off: a permutation of the panels, no ghost, no tick, no wait mark, one tone; revealed where they stand', () => {
    const { player, stage } = onStage()
    player.seek(2)
    player.hideNames()
    const { session, lesson } = player.store.getState()
    expect([...session.order].sort()).toEqual([0, 1, 2])
    for (const { ghost, beads } of stage.drawn.at(-1) ?? []) {
      expect(ghost).toBeNull()
      expect(beads.every(({ tick, waited }) => tick === null && waited === '')).toBe(true)
    }
    for (const index of session.order)
      expect(panelView(lesson, index, viewOf(lesson, 380, 420), false).picture.tone).toBe('plain')
    player.reveal()
    expect(player.store.getState().session).toMatchObject({ names: true, order: session.order })
  })
  test('refuses a figure that is not there and an empty list', () => {
    const { player } = onStage()
    expect(() => player.choose('nobody')).toThrow(RangeError)
    expect(() => createPlayer([], crankedDriver())).toThrow(RangeError)
  })
})
