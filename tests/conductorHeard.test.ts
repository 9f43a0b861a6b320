import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { withOpposite } from '../src/session/session.ts'
import { evenly } from './tools/evenly.ts'
import type { Devices } from './tools/fakeSound.ts'
import { expectHeard, GIVING_WAY, LONG, playing, SHORT, SQQ, samplesNow, tempi, WALTZ } from './tools/playingRoom.ts'

describe('what is shown is heard', () => {
  test.each<[string, Devices]>([
    ['without latency', { latency: 0 }],
    ['at 250 ms to the ear', { latency: 0.25 }],
    ['on a device at 44.1 kHz', { sampleRate: 44_100 }],
    ['on a device that runs 100 millionths fast', { drift: 1e-4 }],
  ])('each tick once, %s', (_, devices) => {
    const room = playing(devices)
    room.run(20)
    // A device's own drift: what was heard long ago was heard at another time than is worked out from now.
    expectHeard(room, devices.drift === undefined ? 60 : 4, devices.drift === undefined ? 0 : room.fake.page() - 2)
    expect(room.fake.device.played.length).toBe(1)
  })
  test('a listener’s offset, found by ear: then it is heard when it is shown', () => {
    // The device says nothing, and 180 ms pass; the offset is set while it plays.
    const room = playing({ stamps: 'zeros', latency: 0.18 })
    room.cut(() => room.conductor.set({ offset: 0.18 }))
    room.run(5)
    const { shown, heard } = room.ticks(room.fake.page() - 4)
    expect(shown.length).toBeGreaterThan(10)
    expect(heard.length).toBe(shown.length)
    for (const [k, at] of shown.entries()) expect(Math.abs(at - (heard[k] ?? 0))).toBeLessThan(128 / 48_000 + 0.0005)
  })
  test('a clock in steps at 120 Hz: the beat that is drawn lies within 0.5 ms rms of an even one', () => {
    for (const sampleRate of [44_100, 48_000]) {
      const room = playing({ stamps: 'zeros', sampleRate })
      const { player, fake } = room
      player.seek(0)
      room.run(3, 120)
      let [before, turns] = [player.beatNow() as number, 0]
      const off = Array.from({ length: 2400 }, () => {
        fake.crank(1 / 120)
        const at = player.beatNow()
        if (at < before) turns++
        before = at
        return (at + turns * player.store.getState().lesson.round) * player.clock().secondsPerBeat - fake.page()
      })
      const mean = off.reduce((sum, v) => sum + v, 0) / off.length
      const rms = Math.sqrt(off.reduce((sum, v) => sum + (v - mean) ** 2, 0) / off.length)
      expect(rms).toBeLessThan(0.0005)
      expect(Math.max(...off.map((v) => Math.abs(v - mean)))).toBeLessThan(0.002)
    }
  })
  test('at a change of tempo: the new sound within 50 ms, once, the beat kept', () => {
    const room = playing({ latency: 0.25 })
    const { from, to } = tempi(room)
    for (let k = 0; k < 20; k++) {
      const [count, now, beat] = [room.fake.device.played.length, room.fake.device.time, room.player.beatNow()]
      room.act(() => room.player.setTempo(k % 2 === 0 ? from + k : to - k))
      expect(room.player.beatNow()).toBe(beat)
      expect(room.fake.device.played.length).toBe(count + 1)
      expect((room.fake.device.played.at(-1)?.begins ?? 0) / 48_000 - now).toBeLessThan(0.05)
      room.run(0.37)
    }
    expectHeard(room, 10, 0, GIVING_WAY)
  })
  test('on a page that needs 40 ms to make a round: it is not late, and what sounded sounds until then', () => {
    for (const figure of [SQQ, LONG]) {
      const room = playing({ latency: 0.04 }, [figure])
      const { from } = tempi(room)
      const { device } = room.fake
      room.cut(() => room.player.setTempo(from * 1.3))
      room.run(1)
      device.making = () => room.fake.busy(0.04)
      for (let k = 0; k < 6; k++) {
        const before = [...device.played]
        room.act(() => room.player.setTempo(from * (1.2 + 0.1 * (k % 2))))
        const begins = device.played[before.length]?.begins ?? 0
        // It was asked for in time; then, in a long round, the page makes what follows.
        expect(begins - samplesNow(room)).toBeGreaterThan(figure === SQQ ? 0 : -0.1 * 48_000)
        const away = before.map(({ ends }) => Math.abs(ends - begins - GIVING_WAY * 48_000))
        expect(Math.min(...away)).toBeLessThanOrEqual(1)
        room.run(1.7)
      }
      // For 40 ms the picture goes by the new tempo, and what is heard by the old.
      expectHeard(room, 8, 0, 0.01)
    }
  })
  test('a tempo dragged at 120 events a second: each tick once', () => {
    for (const latency of [0.01, 0.25]) {
      const room = playing({ latency }, [SHORT])
      const { from, to } = tempi(room)
      for (let k = 0; k < 60; k++) {
        room.act(() => room.player.setTempo(to + (from - to) * (0.25 - 0.25 * Math.cos(k / 14))))
        room.run(1 / 120, 120)
      }
      room.run(1)
      expectHeard(room, 8, 0, GIVING_WAY)
    }
  })
  test('over 200 random changes of tempo from the slowest to the fastest: each tick once, one new sound for each', () => {
    const [change] = fc.sample(
      fc.array(fc.tuple(evenly(0, 1), evenly(0, 0.5)), {
        ...{ minLength: 200, maxLength: 200 },
      }),
      { numRuns: 1, seed: 20261125 },
    )
    const room = playing({ latency: 0.04 }, [SHORT])
    const { from, to } = tempi(room)
    const { played } = room.fake.device
    for (const [part, time] of change ?? []) {
      const count = played.length
      room.act(() => room.player.setTempo(from + part * (to - from)))
      // Drawn twice, a tempo is no change.
      expect(played.length).toBeLessThanOrEqual(count + 1)
      room.run(time)
    }
    expect(played.length).toBeGreaterThan(180)
    expectHeard(room, 60, 0, GIVING_WAY)
    expect([room.jump < 0.001, room.back >= 0]).toEqual([true, true])
  }, 20_000)
  test('over random changes of tempo, loop, steps, figure, seeks, pauses and stalls: each tick once', () => {
    const change = fc.record({
      what: fc.constantFrom(
        ...([
          'tempo',
          'tempo',
          'tempo',
          'seek',
          'loop',
          'steps',
          'figure',
          'pause',
          'stall',
          'opposite',
          'order',
        ] as const),
      ),
      part: evenly(0, 1),
      time: evenly(0.02, 0.9),
    })
    let changes = 0
    let heardInAll = 0
    fc.assert(
      fc.property(
        fc.array(change, { minLength: 12, maxLength: 30 }),
        fc.constantFrom(0.01, 0.04, 0.25),
        fc.constantFrom(24, 60, 144),
        (list, latency, rate) => {
          const room = playing({ latency })
          const { player } = room
          for (const { what, part, time } of list) {
            const { from, to } = tempi(room)
            const { range } = player.store.getState().lesson
            if (!player.clock().playing) room.cut(() => player.play())
            if (what === 'tempo') room.act(() => player.setTempo(from + part * (to - from)))
            if (what === 'seek') room.cut(() => player.seek(range.from + part * (range.to - range.from)))
            if (what === 'loop') room.act(() => player.setLoop(!player.store.getState().session.loop))
            if (what === 'steps') room.act(() => player.toggleSteps())
            if (what === 'figure') room.cut(() => player.choose(part < 0.5 ? 'sqq' : 'waltz'))
            if (what === 'pause') room.cut(() => player.pause())
            if (what === 'stall') room.stall(time)
            if (what === 'opposite') room.act(() => player.change((session) => withOpposite(session, part < 0.5)))
            if (what === 'order') room.act(() => player.setOrder(part < 0.5 ? [0] : [0, 1, 2]))
            if (!player.clock().playing) room.cut(() => player.play())
            room.run(time, rate)
            changes++
          }
          expectHeard(room, 1, 0, GIVING_WAY)
          heardInAll += room.ticks().heard.length
          expect(room.back).toBeGreaterThanOrEqual(0)
          expect(room.jump).toBeLessThan(0.001)
        },
      ),
      { numRuns: 10, seed: 20261125, endOnFailure: true },
    )
    expect(changes).toBeGreaterThan(200)
    // Much lies in cuts; the test before this one has none.
    expect(heardInAll).toBeGreaterThan(100)
  }, 20_000)
  test('danced once: heard to its end and no farther, also on a page that stalls then', () => {
    for (const latency of [0.01, 0.25]) {
      const room = playing({ latency }, [WALTZ])
      room.act(() => room.player.setLoop(false))
      room.stall(1.3)
      room.run(1)
      const begun = room.fake.device.played.length
      // What lasts is left to come to its end.
      room.stall(10)
      const silent = room.fake.device.mix(Math.round(samplesNow(room) - 5 * 48_000), Math.round(samplesNow(room)))
      expect(silent.every((sample) => sample === 0)).toBe(true)
      room.run(1)
      expect([room.player.store.getState().playing, room.fake.device.played.length]).toEqual([false, begun])
      expectHeard(room, 3)
    }
  })
})

describe('long', () => {
  test('8 hours of one loop: each tick once, off by less than 1 ms at the end', () => {
    const room = playing({ latency: 0.04 }, [SQQ])
    const { fake, player } = room
    const [played] = fake.device.played
    const { lesson } = player.store.getState()
    /** Beats into a round, by what is heard. */
    const byEar = (): number => {
      if (played === undefined) throw new Error('nothing sounds')
      const samples = (fake.device.time - fake.device.latency) * 48_000 - played.begins + played.into
      return ((samples % played.buffer.length) / played.buffer.length) * lesson.round
    }
    let rounds = 0
    let before = 0
    for (let k = 0; k < 2880; k++) {
      fake.crank(10)
      const off = player.beatNow() - lesson.range.from - byEar()
      const shortest = off - Math.round(off / lesson.round) * lesson.round
      expect(Math.abs(shortest) * player.clock().secondsPerBeat).toBeLessThan(0.001)
      rounds += 10 / player.clock().secondsPerBeat / lesson.round
      before += shortest
    }
    // One buffer over and over, begun once: each tick of it once a round.
    expect([fake.device.played.length, rounds > 6000, Math.abs(before / 2880) < 0.001]).toEqual([1, true, true])
  })
  test('a long round in chunks: no gap and no overlap, 4 s and more are asked for, at most 16 MB are held', () => {
    for (const tempo of [0, 0.3]) {
      const room = playing({ latency: 0.04 }, [LONG])
      const { from, to } = tempi(room)
      room.act(() => room.player.setTempo(from + tempo * (to - from)))
      const { fake } = room
      const first = fake.device.played.length
      for (let frame = 0; frame < 150 * 30; frame++) {
        if (frame % 600 === 599) fake.wait(3.9)
        else fake.crank(1 / 30)
        const until = Math.max(...fake.device.played.map(({ ends }) => ends)) - samplesNow(room)
        if (frame % 600 !== 599) expect(until).toBeGreaterThan(4 * 48_000)
        expect(fake.device.bytes()).toBeLessThanOrEqual(16_000_000)
      }
      const chunks = fake.device.played.slice(first - 1)
      expect(chunks.length).toBeGreaterThan(4)
      for (const [k, { begins }] of chunks.entries()) if (k > 0) expect(begins).toBe(chunks[k - 1]?.ends)
      expectHeard(room, 50)
    }
  })
  test('a long round, after a page that was away for an hour: on the beat again, and nothing made of what is past', () => {
    const room = playing({ latency: 0.04 }, [LONG])
    room.act(() => room.player.setTempo(tempi(room).from))
    room.run(2)
    const before = room.fake.device.played.length
    room.fake.wait(3600)
    const from = room.fake.page()
    room.run(3)
    expect(room.fake.device.played.length - before).toBeLessThan(4)
    room.run(20)
    expectHeard(room, 10, from + 0.2)
    expect(room.jump).toBeLessThan(0.001)
  })
})
