import { describe, expect, test } from 'vitest'
import { crankedDriver } from '../src/clock/crankedDriver.ts'
import { createPlayer } from '../src/createPlayer.ts'
import type { Player } from '../src/player.ts'
import type { PanelFrame } from '../src/scene/panelPicture.ts'
import { panelView } from '../src/scene/panelView.ts'
import { type View, viewsOf } from '../src/scene/view.ts'
import { withAmount } from '../src/session/session.ts'
import type { Metres } from '../src/units.ts'
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
  return session.order.map((index) =>
    panelView(lesson, index, viewsOf(lesson, 380, 420)[0] as View, session.names).frameAt(at),
  )
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
    // Foxtrot at 29 bars a minute: 116 beats a minute, to half a sample in the round; half a beat to the seam.
    const { secondsPerBeat } = player.clock()
    expect(Math.abs(secondsPerBeat - 60 / 116) * 8).toBeLessThanOrEqual(0.5 / 48_000)
    driver.crank(0.5 * secondsPerBeat + 1e-9)
    expect(player.beatNow()).toBeCloseTo(-0.5, 6)
    const still = fresh(player, -0.5)
    for (const [k, { marker }] of (stage.drawn.at(-1) ?? []).entries()) {
      expect(marker.x).toBeCloseTo(still[k]?.marker.x as number, 6)
      expect(marker.y).toBeCloseTo(still[k]?.marker.y as number, 6)
    }
  })
})

describe('createPlayer(figures, driver): pages and loops while it plays', () => {
  const LONG = walks(
    'foxtrot',
    Array.from({ length: 16 }, () => 1),
    { id: 'long' },
  )
  const secondsABeat = 60 / 116

  test('pages are built when they turn, once each in a round, and the next round begins on the first again', () => {
    const { driver, player, stage } = onStage([LONG])
    const { range, round } = player.store.getState().lesson
    const pages = player.pictureNow()[0]?.picture.page.count ?? 0
    expect(pages).toBeGreaterThan(2)
    const before = stage.set
    player.play()
    const seen: number[] = []
    for (let t = 0; t < round + 1; t += 1 / 8) {
      driver.crank(secondsABeat / 8)
      const { index } = player.pictureNow()[0]?.picture.page ?? { index: -1 }
      if (seen.at(-1) !== index) seen.push(index)
    }
    expect(seen).toEqual([...Array.from({ length: pages }, (_, k) => k), 0])
    expect(stage.set - before).toBe(pages)
    expect(player.beatNow()).toBeLessThan(range.from + 1.5)
  })

  test('this step with the one before it: past its end the beat is back at its start, still playing', () => {
    const { driver, player } = onStage()
    player.seek(2.5)
    player.toggleSteps()
    const { range, round } = player.store.getState().lesson
    expect([range.from, range.to, round]).toEqual([-0.5, 4.5, 5])
    player.play()
    const { secondsPerBeat } = player.clock()
    driver.crank((range.to - 2.5) * secondsPerBeat + 0.01)
    expect(player.beatNow()).toBeCloseTo(range.from + 0.01 / secondsPerBeat, 6)
    expect(player.store.getState().playing).toBe(true)
    player.toggleSteps()
    expect(player.store.getState().lesson.round).toBe(8)
  })

  test('after "who is late?" the panels keep their numbers until they stand otherwise', () => {
    const { player } = onStage()
    expect(player.store.getState().asked).toBe(false)
    player.hideNames()
    player.reveal()
    expect(player.store.getState().asked).toBe(true)
    player.setOrder([1, 0])
    expect(player.store.getState().asked).toBe(false)
  })

  test('another figure keeps the part of its tempo', () => {
    const { player } = onStage()
    player.setTempo(14.5)
    player.choose('waltz')
    expect(player.store.getState().session.barsPerMinute).toBe(14.5)
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
    player.change((session) => withAmount(session, 'late', 0))
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
      expect(panelView(lesson, index, viewsOf(lesson, 380, 420)[0] as View, false).picture.tone).toBe('plain')
    player.reveal()
    expect(player.store.getState().session).toMatchObject({ names: true, order: session.order })
  })
  test('refuses a figure that is not there and an empty list', () => {
    const { player } = onStage()
    expect(() => player.choose('nobody')).toThrow(RangeError)
    expect(() => createPlayer([], crankedDriver())).toThrow(RangeError)
  })
})

const OWN = `overfoot: 1
title: Mine
dance: waltz
role: leader
first foot: right
timing: 1 2 3
actions: [forward, side, close]
`

describe('createPlayer(figures, driver): figures of one’s own', () => {
  test('a good text is added and shown; the same file again takes its place', async () => {
    const { player } = onStage()
    expect((await player.open(OWN, 'mine.figure.yaml')).ok).toBe(true)
    expect(player.store.getState().lesson.figure.title).toBe('Mine')
    await player.open(OWN, 'other.figure.yaml')
    await player.open(OWN.replace('Mine', 'Mine, mended'), 'mine.figure.yaml')
    expect(player.store.getState().own.map(({ figure }) => figure.title)).toEqual(['Mine, mended', 'Mine'])
    expect(player.store.getState().lesson.figure.title).toBe('Mine, mended')
  })
  test('a file named like a demo does not clash with it', async () => {
    const { player } = onStage()
    await player.open(OWN, 'sqq.figure.yaml')
    player.choose('sqq')
    expect(player.store.getState().lesson.figure).toBe(SQQ)
    player.choose(player.store.getState().own[0]?.figure.id ?? '')
    expect(player.store.getState().lesson.figure.title).toBe('Mine')
  })
  test('with problems nothing changes, and it plays on', async () => {
    const { player, driver } = onStage()
    player.play()
    const before = player.store.getState()
    expect((await player.open('title: no more', 'bad.yaml')).ok).toBe(false)
    expect(player.store.getState()).toBe(before)
    expect(driver.running).toBe(true)
  })
  test('a figure that cannot be shown leaves the screen as it was, playing', () => {
    const { player, driver, stage } = onStage()
    player.play()
    const before = player.store.getState()
    const figure = {
      ...SQQ,
      id: 'own:broken',
      actions: SQQ.actions.map((action) => ({ ...action, size: Number.POSITIVE_INFINITY as Metres })),
    }
    expect(() => player.restore({ ...before.session, figure: 'own:broken' }, { figure, text: '' })).toThrow()
    expect(player.store.getState()).toBe(before)
    expect(driver.running).toBe(true)
    driver.crank(0.2)
    expect(places(stage.drawn.at(-1) ?? [])).toEqual(places(fresh(player, player.beatNow())))
  })
  test('a stage that fails on a figure draws the former one again', () => {
    const { player, stage } = onStage()
    const before = player.store.getState()
    let left = 0
    const failing = {
      ...stage,
      draw(frames: readonly PanelFrame[]) {
        if (left === 1) {
          left = 0
          throw new Error('out of memory')
        }
        stage.draw(frames)
      },
    }
    player.show(failing, RECTS, false)
    left = 1
    expect(() => player.choose('waltz')).toThrow('out of memory')
    expect(player.store.getState()).toBe(before)
    expect(places(stage.drawn.at(-1) ?? [])).toEqual(places(fresh(player, player.beatNow())))
  })
  test('a session of a figure that is not known is refused', () => {
    const { player } = onStage()
    const { session } = player.store.getState()
    expect(() => player.restore({ ...session, figure: 'no such' })).toThrow(RangeError)
  })
})

describe('player.setTiming(index)', () => {
  const BOTH = { ...SQQ, id: 'both', timings: [SQQ.timings[0], walks('foxtrot', [1, 1, 2]).timings[0]] as const }
  test('the same actions, otherwise timed; the beat stays', () => {
    const { player } = onStage([BOTH])
    player.seek(1.5)
    player.setTiming(1)
    const { session, lesson } = player.store.getState()
    expect(session.timing).toBe(1)
    expect(lesson.schedule.timing).toBe(BOTH.timings[1])
    expect(player.beatNow()).toBe(1.5)
    player.setTiming(5)
    expect(player.store.getState().session.timing).toBe(1)
  })
  test('a beat between the new timing’s grid points moves to the nearest', () => {
    const quarters = {
      ...SQQ,
      id: 'quarters',
      timings: [walks('foxtrot', [1.75, 0.25, 2]).timings[0], SQQ.timings[0]] as const,
    }
    const { player } = onStage([quarters])
    player.seek(1.75)
    expect(player.beatNow()).toBe(1.75)
    player.setTiming(1)
    expect(player.beatNow()).toBe(2)
    expect(player.store.getState().session.beat).toBe(2)
  })
})
