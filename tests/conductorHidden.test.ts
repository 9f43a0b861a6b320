import { describe, expect, test } from 'vitest'
import { expectHeard, LONG, playing, SQQ, samplesNow, tempi } from './tools/playingRoom.ts'
import type { SoundRoom } from './tools/soundRoom.ts'

/** Nothing asked for in the past, no two clicks nearer than half a beat, and the bar where it was. */
function expectSteady(room: SoundRoom, from: number, least: number): void {
  const { heard } = room.ticks(from)
  const { secondsPerBeat } = room.player.clock()
  expect(heard.length).toBeGreaterThan(least)
  for (const [k, at] of heard.entries())
    if (k > 0) expect(at - heard[k - 1]!).toBeGreaterThan(secondsPerBeat / 2 - 0.001)
  expectHeard(room, least, from)
}

/** Whatever is asked for is still to come when it is. */
function watchPast(room: SoundRoom): () => number {
  const { device } = room.fake
  let [seen, latest] = [device.played.length, 0]
  const look = (): number => {
    for (const { begins } of device.played.slice(seen)) latest = Math.max(latest, samplesNow(room) - begins)
    seen = device.played.length
    return latest
  }
  const make = device.making
  device.making = () => {
    make()
    look()
  }
  return look
}

describe('a hidden page', () => {
  const figures = [
    ['one buffer', SQQ, 1],
    ['chunks', LONG, 1],
    ['chunks, faster', LONG, 2.3],
  ] as const
  test.each(figures.flatMap((one) => [1, 60].map((every) => [...one, every] as const)))(
    '%s: it goes on, on the beat',
    (_, figure, faster, every) => {
      const room = playing({ latency: 0.04 }, [figure])
      room.cut(() => room.player.setTempo(tempi(room).from * faster))
      room.run(1.3)
      const past = watchPast(room)
      const from = room.fake.page() - 1
      const begun = room.fake.device.played.length
      room.fake.hide(every)
      let most = 0
      for (let second = 0; second < 135; second++) {
        room.stall(1)
        most = Math.max(most, room.fake.device.bytes())
        past()
      }
      expect(past()).toBeLessThanOrEqual(0)
      expect(most).toBeLessThanOrEqual(16_000_000)
      room.fake.hide(null)
      room.run(3)
      expectSteady(room, from, 60)
      // What loops is left alone.
      if (figure === SQQ) expect(room.fake.device.played.length).toBe(begun)
      expect(room.jump).toBeLessThan(0.001)
    },
    20_000,
  )
  test.each(figures)('%s: frozen for a minute, and shown again', (_, figure, faster) => {
    const room = playing({ latency: 0.04 }, [figure])
    room.cut(() => room.player.setTempo(tempi(room).from * faster))
    room.run(1.3)
    const past = watchPast(room)
    const from = room.fake.page() - 1
    room.fake.hide(1)
    past()
    room.fake.busy(60)
    room.fake.hide(null)
    for (let second = 0; second < 20; second++) {
      room.run(1)
      past()
    }
    expect(past()).toBeLessThanOrEqual(0)
    expectSteady(room, from, 30)
    expect(room.jump).toBeLessThan(0.001)
  })
  test('frozen for longer than was asked for: silent in the end, and on the beat again when it is shown', () => {
    const room = playing({ latency: 0.04 }, [LONG])
    room.cut(() => room.player.setTempo(tempi(room).from))
    room.run(1.3)
    room.fake.hide(1)
    room.fake.busy(300)
    const now = Math.floor(samplesNow(room))
    expect(room.fake.device.mix(now - 96_000, now).every((sample) => sample === 0)).toBe(true)
    const from = room.fake.page()
    room.fake.hide(null)
    room.run(10)
    expectSteady(room, from + 0.3, 5)
  })
  test('counted in and hidden at once: the round follows', () => {
    const room = playing({ latency: 0.04 }, [SQQ])
    room.cut(() => room.player.pause())
    room.cut(() => room.player.seek(room.player.store.getState().lesson.range.from))
    room.run(0.5)
    room.act(() => room.player.play(2))
    room.fake.hide(60)
    for (let second = 0; second < 50; second++) room.stall(1)
    room.fake.hide(null)
    expectSteady(room, room.fake.page() - 49, 80)
  })
})
