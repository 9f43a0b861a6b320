import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Devices } from './tools/fakeSound.ts'
import { expectHeard, playing, SQQ, WALTZ } from './tools/playingRoom.ts'
import { soundRoom } from './tools/soundRoom.ts'

const FIGURES = [SQQ, WALTZ]
const FRAME = 1 / 60

describe('createConductor(player, speaker, driver): the picture waits for nothing', () => {
  test('before a press nothing is made, whatever else is done', () => {
    const { fake, player, conductor, speaker, run } = soundRoom(FIGURES)
    player.play()
    run(2)
    player.setTempo(20)
    player.seek(2)
    conductor.set({ volume: 0.2, halves: false, offset: 0.1, count: 'counting' })
    run(1)
    expect([fake.made.length, speaker.state]).toEqual([0, 'off'])
  })
  test.each<[string, Devices, 'good' | 'none' | 'throws']>([
    ['suspended, and resume never settles', { resuming: 'never' }, 'good'],
    ['suspended, and resume rejects', { resuming: 'rejects' }, 'good'],
    ['interrupted', { state: 'interrupted', called: true }, 'good'],
    ['frozen while it runs', { state: 'running', frozen: true }, 'good'],
    ['not there', {}, 'none'],
    ['not to be had', {}, 'throws'],
    ['good', {}, 'good'],
  ])('play moves the picture with the next frame; the sound is %s', (_, devices, browser) => {
    const room = soundRoom(FIGURES, devices)
    room.fake.browser = browser
    const before = room.player.beatNow()
    room.act(() => room.conductor.set({ on: true }))
    room.act(() => room.player.play())
    const { secondsPerBeat } = room.player.clock()
    for (let frame = 1; frame < 120; frame++) {
      room.run(FRAME)
      expect((room.player.beatNow() - before) * secondsPerBeat).toBeCloseTo(frame * FRAME, 3)
    }
    expect([room.jump < 0.001, room.back >= 0]).toEqual([true, true])
  })
  test('after any events that end with a press: what is shown is heard, or it says that nothing is', () => {
    const event = fc.constantFrom(
      ...(['press', 'off', 'play', 'count in', 'pause', 'tempo', 'next', 'seek', 'offset', 'time', 'time'] as const),
      ...(['call', 'end of call', 'freeze', 'close', 'latency'] as const),
      ...(['none', 'throws', 'good', 'never', 'rejects', 'stands'] as const),
    )
    const seen = { sounding: 0, waiting: 0, missing: 0, off: 0 }
    fc.assert(
      fc.property(fc.array(event, { maxLength: 25 }), fc.boolean(), (events, cured) => {
        const room = soundRoom(FIGURES)
        const { fake, player, conductor, speaker } = room
        for (const one of events) {
          const device = fake.made.at(-1)
          room.act(() => {
            if (one === 'press') conductor.set({ on: true })
            if (one === 'off') conductor.set({ on: false })
            if (one === 'play') player.play()
            if (one === 'count in') player.play(2)
            if (one === 'next') player.nextRound(24 + (events.length % 7), 1)
            if (one === 'pause') player.pause()
            if (one === 'tempo') player.setTempo(23 + (events.length % 9))
            if (one === 'seek') player.seek(1.5)
            if (one === 'offset') conductor.set({ offset: conductor.store.getState().offset === 0 ? 0.12 : 0 })
            if (one === 'none' || one === 'throws' || one === 'good') fake.browser = one
            if (one === 'never' || one === 'rejects' || one === 'stands') fake.devices = { resuming: one }
            if (one === 'good') fake.devices = {}
            if (device === undefined) return
            if (one === 'call') Object.assign(device, { called: true })
            if (one === 'call' && device.state === 'running') device.set('interrupted')
            if (one === 'end of call') Object.assign(device, { called: false })
            if (one === 'end of call' && device.state === 'interrupted') device.set('running')
            if (one === 'freeze') device.frozen = true
            if (one === 'close') device.context.close().catch(() => {})
            if (one === 'latency') device.latency = 0.29 - device.latency
          })
          room.run(one === 'time' ? 0.6 : 0.1, 30)
        }
        room.run(0.5, 30)
        if (cured) {
          Object.assign(fake, { browser: 'good', devices: {} })
          const device = fake.made.at(-1)
          if (device !== undefined) Object.assign(device, { called: false, resuming: 'settles' })
        }
        room.act(() => conductor.set({ on: true, offset: 0 }))
        room.act(() => player.play())
        // It has come to sound, or not; and a change of latency is mended by then.
        room.run(1.5, 30)
        // Not on a tick, which would be shown before and heard after.
        const from = fake.page() + 0.0037
        room.run(1, 30)
        seen[speaker.state]++
        if (cured) expect(speaker.state).toBe('sounding')
        if (speaker.state === 'sounding') expectHeard(room, 2, from)
        else expect(fake.made.every(({ state, frozen }) => state !== 'running' || frozen)).toBe(true)
        expect(room.jump).toBeLessThanOrEqual(FRAME)
        expect(room.back).toBeGreaterThanOrEqual(0)
      }),
      { numRuns: 80, seed: 20261125 },
    )
    // The events lead to all that can be.
    expect(Math.min(seen.sounding, seen.waiting, seen.missing)).toBeGreaterThan(4)
    expect(seen.off).toBe(0)
  })
  test('stop and play 100 times: it stands where it stood', () => {
    for (const latency of [0, 0.015, 0.25]) {
      const room = playing({ latency, says: latency })
      room.act(() => room.player.pause())
      room.act(() => room.player.seek(1.5))
      for (let k = 0; k < 100; k++) {
        room.act(() => room.player.play())
        room.run(0.1)
        room.act(() => room.player.pause())
        room.run(0.05)
        expect(room.player.beatNow()).toBe(1.5)
      }
      expect(room.jump).toBeLessThan(0.001)
    }
  })
  test('sound off and on 50 times, calls, offsets: the driver’s time goes on as the page’s', () => {
    const room = playing({ latency: 0.2, says: Number.NaN })
    const { conductor, fake, driver } = room
    const ahead = driver.now() - fake.page()
    for (let k = 0; k < 50; k++) {
      room.act(() => conductor.set({ on: k % 2 === 1, offset: (k % 5) * 0.07 }))
      room.run(0.23)
      if (k % 4 === 1) room.act(() => fake.device.set('interrupted'))
      room.run(0.11)
      if (k % 4 === 1) room.act(() => fake.device.set('running'))
      room.run(0.3)
    }
    expect(room.jump).toBeLessThan(0.001)
    expect(Math.abs(driver.now() - fake.page() - ahead)).toBeLessThan(0.005)
  })
  test('reported() is the device’s, the offset the listener’s, and what is drawn lies behind by both, once', () => {
    for (const [says, offset] of [
      [0.015, 0],
      [0.25, 0.1],
      [undefined, 0.2],
      [Number.NaN, -0.02],
    ] as const) {
      const room = playing({ stamps: 'zeros', latency: 0.25, says })
      room.act(() => room.conductor.set({ offset }))
      room.run(2)
      const device = says === undefined || Number.isNaN(says) ? 0 : says
      expect(room.conductor.reported()).toBe(device)
      const behind = room.fake.device.time - (room.speaker.heardAt(room.fake.page()) ?? Number.NaN)
      expect(Math.abs(behind - device - offset)).toBeLessThan(128 / 48_000 + 0.0001)
    }
  })
})
