import { describe, expect, test } from 'vitest'
import { type Along, createAlong } from '../src/along.ts'
import { withCountIn, withOpposite } from '../src/session/session.ts'
import { musicPlace } from '../src/timing/counts.ts'
import { seconds } from '../src/units.ts'
import { walks } from './tools/exampleFigure.ts'
import type { Devices } from './tools/fakeSound.ts'
import { near } from './tools/near.ts'
import { expectHeard, GIVING_WAY, SQQ, WALTZ } from './tools/playingRoom.ts'
import { type SoundRoom, soundRoom } from './tools/soundRoom.ts'

/** Rumba begins on count 2. */
const RUMBA = walks('rumba', [1, 1, 2], { id: 'rumba' })

type Room = SoundRoom & { readonly along: Along; pass(seconds: number): void }

/** A page beside a band; timers are cranked by hand. */
function beside(figures = [SQQ], devices: Devices | null = null): Room {
  const room = soundRoom(figures, devices ?? {})
  const timers = new Set<{ due: number; call: () => void }>()
  const along = createAlong(room.player, room.fake.page, (wait, call) => {
    const timer = { due: room.fake.page() + wait, call }
    timers.add(timer)
    return () => timers.delete(timer)
  })
  if (devices !== null) {
    room.act(() => room.conductor.set({ on: true }))
    room.run(1)
  }
  const pass = (time: number): void => {
    room.fake.wait(time)
    for (const timer of [...timers]) if (timer.due <= room.fake.page() && timers.delete(timer)) timer.call()
  }
  return { ...room, along, pass }
}

/** Taps on so many beats of music, as they pass. Returns when its bars begin. */
function tapAlong(room: Room, lasts: number, beats: number, off = 0): number {
  const one = room.fake.page() + 0.1
  room.run(0.1)
  for (let beat = 0; beat < beats; beat++) {
    room.act(() => room.along.tap(seconds(room.fake.page() + off)))
    if (beat < beats - 1) room.run(lasts, 1 / (lasts / Math.round(lasts * 60)))
  }
  return one + off
}

/** How far the picture's bar is from the music's just now, in beats. */
function outOfBar({ player, fake }: Room, one: number, lasts: number, every?: number): number {
  const { schedule } = player.store.getState().lesson
  const { count, part } = musicPlace(schedule, player.beatNow())
  const bar = every ?? schedule.beatsPerBar
  const apart = count - 1 + part - (fake.page() - one) / lasts
  return apart - Math.round(apart / bar) * bar
}

describe('createAlong(player): with the music', () => {
  test.each([
    ['foxtrot', SQQ, 60 / 116],
    ['waltz', WALTZ, 60 / 87],
    ['rumba, which begins on 2', RUMBA, 60 / 102],
  ])('%s: the figure’s bars begin as the music’s do, counted in for a beat to a bar and one', (_, figure, lasts) => {
    const room = beside([figure])
    const { player } = room
    const one = tapAlong(room, lasts, 9)
    near(
      60 / player.store.getState().session.barsPerMinute / player.store.getState().lesson.dance.beatsPerBar,
      lasts,
      1e-6,
    )
    expect([player.store.getState().playing, player.store.getState().along]).toEqual([false, null])
    room.along.start()
    expect(player.store.getState().playing).toBe(true)
    const { range, dance } = player.store.getState().lesson
    const waits = range.from - player.beatNow()
    expect(waits).toBeGreaterThanOrEqual(1 - 1e-9)
    expect(waits).toBeLessThan(1 + dance.beatsPerBar)
    for (let k = 0; k < 60; k++) {
      near(outOfBar(room, one, lasts), 0, 1e-3, k)
      room.run(0.37)
    }
  })
  test('as many bars are counted in as are set, and what is left of the music’s', () => {
    const room = beside()
    tapAlong(room, 0.5, 5)
    room.player.change((session) => withCountIn(session, 2))
    room.along.start()
    const waits = room.player.store.getState().lesson.range.from - room.player.beatNow()
    expect(waits).toBeGreaterThan(7)
    expect(waits).toBeLessThan(12)
  })
  test.each<[string, Devices]>([
    ['at 250 ms to the ear', { latency: 0.25 }],
    ['that tells no latency, with an offset', { stamps: 'zeros', latency: 0.18 }],
  ])(
    'sound from a device %s: what is seen is at the music’s beat, and what is heard at what is seen',
    (name, devices) => {
      const room = beside([SQQ], devices)
      if (name.includes('offset')) room.act(() => room.conductor.set({ offset: 0.18 }))
      room.run(1)
      // Not on a frame: what lies on the border of two is counted twice, or never.
      const one = tapAlong(room, 0.5, 9, 0.0037)
      room.cut(() => room.along.start())
      for (let k = 0; k < 40; k++) {
        room.run(0.3)
        near(outOfBar(room, one, 0.5), 0, 0.01, k)
      }
      expectHeard(room, 10, room.fake.page() - 8, GIVING_WAY)
    },
  )
  test('taps while it plays along: tempo and bar as they are tapped, without a jump while they are little off', () => {
    const room = beside([SQQ], { latency: 0.04 })
    tapAlong(room, 0.5, 9)
    room.cut(() => room.along.start())
    room.run(4)
    // The band is 4 % slower now, and begins anew on a one.
    room.run(3.1)
    let before = room.player.beatNow() as number
    let most = 0
    const one = tapAlong(room, 0.52, 1)
    for (let beat = 1; beat < 20; beat++) {
      for (let k = 0; k < 26; k++) {
        room.run(0.02, 50)
        const now = room.player.beatNow() as number
        const { round } = room.player.store.getState().lesson
        const went = now - before - Math.round((now - before) / round) * round
        if (beat > 4) most = Math.max(most, Math.abs(went * 0.52 - 0.02))
        before = now
      }
      room.act(() => room.along.tap(seconds(one + beat * 0.52)))
      if (beat > 13) near(outOfBar(room, one, 0.52), 0, 0.01, beat)
    }
    near(room.player.clock().secondsPerBeat, 0.52, 1e-4)
    expect(most).toBeLessThan(0.004)
    expectHeard(room, 4, room.fake.page() - 3, 0.006)
  })
  test('a nudge is half a beat, at once; it stays when it is tapped again, and goes with other music', () => {
    const room = beside()
    const { along } = room
    const one = tapAlong(room, 0.5, 8)
    along.start()
    room.run(5.9)
    along.nudge(1)
    // It begins half a beat later: the picture is half a beat behind what was tapped.
    near(outOfBar(room, one, 0.5), -0.5, 1e-3)
    const again = tapAlong(room, 0.5, 1)
    // Of a run that has only begun nothing is known: the nudge is given to what is.
    along.nudge(1)
    near(outOfBar(room, one, 0.5), -1, 1e-3)
    along.nudge(-1)
    for (let beat = 1; beat < 8; beat++) {
      room.run(0.5)
      along.tap(seconds(again + beat * 0.5))
    }
    room.run(2)
    near(outOfBar(room, again, 0.5), -0.5, 1e-3)
    expect(along.store.getState().taps.nudge).toBe(1)
    along.stop()
    expect([room.player.store.getState().along, room.player.store.getState().playing]).toEqual([null, true])
    room.run(4)
    tapAlong(room, 0.5, 4)
    expect(along.store.getState().taps.nudge).toBe(0)
  })
  test('every other beat was tapped: twice as fast, on the same one', () => {
    const room = beside()
    const one = tapAlong(room, 1.04, 6)
    room.along.read(2)
    near(room.player.clock().secondsPerBeat, 0.52, 1e-4)
    room.along.start()
    room.run(6)
    near(outOfBar(room, one, 0.52), 0, 1e-3)
    room.along.nudge(-1)
    near(outOfBar(room, one, 0.52), 0.5, 1e-3)
  })
  test('at a tempo at which the dance is not played it does not begin', () => {
    const room = beside()
    tapAlong(room, 0.3, 6)
    expect(room.along.canStart()).toBe(false)
    room.along.start()
    expect([room.player.store.getState().along, room.player.store.getState().playing]).toEqual([null, false])
  })
})

test('a page that is held up between its two clocks is with the music all the same', () => {
  const room = beside([SQQ])
  let held = 0
  const along = createAlong(room.player, () => {
    const at = room.fake.page()
    if (held-- > 0) room.fake.busy(0.03)
    return at
  })
  const one = tapAlong({ ...room, along }, 0.5, 9)
  held = 3
  along.start()
  expect(held).toBeLessThan(1)
  room.run(4)
  near(outOfBar(room, one, 0.5), 0, 0.001)
})

describe('createAlong(player): what ends it, and what does not', () => {
  const LASTS = 0.5
  function going(figures = [SQQ, WALTZ]) {
    const room = beside(figures)
    const one = tapAlong(room, LASTS, 8)
    room.along.start()
    room.run(5)
    return { room, one, isAlong: () => room.player.store.getState().along !== null }
  }
  test('another tempo, another figure', () => {
    const tempo = going()
    tempo.room.player.setTempo(25)
    expect(tempo.isAlong()).toBe(false)
    const figure = going()
    figure.room.player.choose('waltz')
    expect(figure.isAlong()).toBe(false)
    const climbs = going()
    climbs.room.player.nextRound(25, 1)
    expect(climbs.isAlong()).toBe(false)
  })
  test('a seek goes to the nearest place that fits; panels, loop and view change nothing', () => {
    const { room, one, isAlong } = going()
    const { player } = room
    for (const at of [0, 3.5, 6, 1]) {
      player.seek(at)
      near(outOfBar(room, one, LASTS), 0, 0.13, at)
      room.run(3)
      near(outOfBar(room, one, LASTS), 0, 2e-3, at)
    }
    player.setOrder([0])
    player.change((session) => withOpposite(session, true))
    player.setLoop(false)
    room.run(0.2)
    expect(isAlong()).toBe(true)
    if (player.store.getState().playing) near(outOfBar(room, one, LASTS), 0, 2e-3)
  })
  test('a few steps: their beats stay on the music’s beats, though a bar does not', () => {
    const { room, one } = going()
    room.player.seek(2)
    room.player.toggleSteps()
    room.run(7)
    near(outOfBar(room, one, LASTS, 1), 0, 2e-3)
  })
  test('paused and played again: counted in to the music’s next bar; from within, on the nearest beat that fits', () => {
    const { room, one, isAlong } = going()
    const { player } = room
    player.pause()
    room.pass(1.234)
    expect(isAlong()).toBe(true)
    player.play()
    near(outOfBar(room, one, LASTS), 0, 0.13)
    room.run(4)
    near(outOfBar(room, one, LASTS), 0, 2e-3)
    player.pause()
    room.pass(3.21)
    player.seek(player.store.getState().lesson.range.from)
    player.play()
    expect(player.beatNow()).toBeLessThan(player.store.getState().lesson.range.from)
    near(outOfBar(room, one, LASTS), 0, 2e-3)
  })
  test('half a minute after a pause nobody knows where the music is', () => {
    const { room, isAlong } = going()
    room.player.pause()
    room.pass(29)
    expect(isAlong()).toBe(true)
    room.player.play()
    room.run(1)
    room.player.pause()
    room.pass(29.5)
    expect(isAlong()).toBe(true)
    room.pass(1)
    expect(isAlong()).toBe(false)
  })
  test('closed: no timer goes on', () => {
    const { room, isAlong } = going()
    room.player.pause()
    room.along.close()
    room.pass(60)
    expect(isAlong()).toBe(true)
  })
})
