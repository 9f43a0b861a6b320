import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { withCounting } from '../src/session/session.ts'
import { evenly } from './tools/evenly.ts'
import { madeVoice } from './tools/madeVoice.ts'
import { expectHeard, GIVING_WAY, LONG, playing, SHORT, SQQ, samplesNow, tempi, WALTZ } from './tools/playingRoom.ts'
import { apart, type SoundRoom, soundRoom } from './tools/soundRoom.ts'

/** Sound on and nobody dancing; what is to sound has been made. */
function standing(devices = {}, figures = [SQQ, WALTZ]): SoundRoom {
  const room = soundRoom(figures, devices)
  room.act(() => room.conductor.set({ on: true }))
  room.run(1)
  return room
}
/** Seconds to the end of the round. */
const left = ({ player }: SoundRoom): number => {
  const { lesson } = player.store.getState()
  return (lesson.range.from + lesson.round - player.beatNow()) * player.clockNow().secondsPerBeat
}
/** Frames until so many seconds before the round's end. */
function runToEnd(room: SoundRoom, before: number): void {
  while (left(room) > before) room.run(1 / 60)
}

describe('counting in', () => {
  test.each([0, 0.04, 0.25])(
    'one bar or two: each tick once, the round follows without a gap; latency %d',
    (latency) => {
      for (const [bars, figure] of [
        [1, SQQ],
        [2, WALTZ],
        [1, LONG],
      ] as const) {
        const room = standing({ latency }, [figure])
        room.act(() => room.player.play(bars))
        expect(room.player.beatNow()).toBeLessThan(room.player.store.getState().lesson.range.from)
        room.run(bars * 3 + 1.5)
        expectHeard(room, 7)
        const [first, second] = room.fake.device.played
        // To the sample.
        expect(second?.begins).toBe(first?.ends)
        expect(room.jump).toBeLessThan(0.001)
      }
    },
    20_000,
  )
  test('the very first click is heard whole: of a count-in, of a play, of a seek', () => {
    const room = standing({ latency: 0.04 }, [WALTZ])
    for (const what of ['count-in', 'play', 'seek'] as const) {
      const from = room.fake.page()
      room.act(() => {
        if (what === 'seek') room.player.seek(1)
        else room.player.play(what === 'count-in' ? 1 : 0)
      })
      room.run(1)
      const { shown, heard } = room.ticks(from + 0.02)
      // Nobody moves before it can be heard.
      expect(shown[0]).toBeGreaterThan(from + 0.06)
      expect(apart(shown, heard)).toMatchObject({ missing: [], more: [] })
      const { device } = room.fake
      const first = Math.round((heard[0]! - device.latency - (room.fake.page() - device.time)) * 48_000)
      const loudest = (at: number): number =>
        device.mix(at, at + 2400).reduce((most, v) => Math.max(most, Math.abs(v)), 0)
      // As loud as the same click later on: half beats 0.08, the first of a bar 0.25, a beat 0.14.
      expect(loudest(first)).toBeCloseTo(what === 'count-in' ? 0.25 : what === 'play' ? 0.08 : 0.14, 2)
      if (what !== 'play') room.cut(() => room.player.pause())
      room.run(0.2)
      if (what === 'count-in') room.act(() => room.player.seek(-0.5))
    }
  })
  test.each([
    ['of a count-in', 1],
    ['of a play', 0],
  ] as const)(
    'held up for longer than the device needs: the very first click %s is heard whole all the same',
    (_, bars) => {
      for (const held of [0.05, 0.12, 0.4]) {
        const room = standing({ latency: 0.04 }, [WALTZ])
        const { device } = room.fake
        let left = 1
        // Just then the page is wanted elsewhere.
        room.player.store.subscribe(() => {})
        device.making = () => {
          if (left-- > 0) room.fake.busy(held)
        }
        room.act(() => room.player.setTempo(tempi(room).to))
        const from = room.fake.page()
        room.act(() => room.player.play(bars))
        room.run(2)
        const { shown, heard } = room.ticks(from)
        expect(left).toBeLessThan(1)
        expect(shown.length).toBeGreaterThan(5)
        expect(apart(shown, heard)).toMatchObject({ missing: [], more: [] })
        const first = Math.round((heard[0]! - device.latency - (room.fake.page() - device.time)) * 48_000)
        const loudest = (at: number): number =>
          device.mix(at, at + 2400).reduce((most, v) => Math.max(most, Math.abs(v)), 0)
        expect(loudest(first)).toBeCloseTo(bars === 1 ? 0.25 : 0.08, 2)
      }
    },
  )
  test('held up a little, as when it climbs to another speed: the first word is heard whole all the same', () => {
    for (const [bars, held] of [0, 1].flatMap((bars) =>
      [0.03, 0.06, 0.1, 0.14, 0.2].map((held) => [bars, held] as const),
    )) {
      const room = soundRoom([SQQ], { latency: 0.04 }, { bar: false, beats: false, halves: false, count: 'counting' })
      room.act(() => room.conductor.set({ on: true }))
      room.player.change((session) => withCounting(session, 'half beats'))
      room.conductor.say(madeVoice({ length: 4800 }))
      room.run(1)
      const { device } = room.fake
      device.making = () => {
        device.making = () => {}
        room.fake.busy(held)
      }
      // All in one turn: what is to sound has not been made.
      room.player.setTempo(tempi(room).to * 0.9)
      room.player.play(bars as 0 | 1)
      const [first] = device.played
      const begins = (first?.begins ?? 0) / 48_000
      const beats = room.driver.toSound(room.player.clock().anchor.now) ?? 0
      // The made word begins 50 ms before its beat.
      expect(beats - begins, `held up ${held} s`).toBeGreaterThan(0.09)
      // Other tempi at once, as a slider is dragged: its breath stays.
      for (const part of [0.8, 0.85, 0.7]) room.player.setTempo(tempi(room).to * part)
      expect(room.driver.toSound(room.player.clock().anchor.now) ?? 0).toBeCloseTo(beats, 6)
    }
  })
  test('a word begins before its beat: the first one is heard whole, and the dancers wait for it', () => {
    const clicks = { bar: false, beats: false, halves: false }
    for (const bars of [0, 1] as const) {
      const room = soundRoom([SQQ], { latency: 0.04 }, { ...clicks, count: 'counting' })
      room.act(() => room.conductor.set({ on: true }))
      room.player.change((session) => withCounting(session, 'half beats'))
      // Shorter than half a beat.
      room.conductor.say(madeVoice({ length: 4800 }))
      room.run(1)
      room.act(() => room.player.play(bars))
      const { anchor, secondsPerBeat } = room.player.clock()
      expect(anchor.now - room.driver.now()).toBeGreaterThan(0.12)
      expect(anchor.now - room.driver.now()).toBeLessThan(0.25)
      const { round } = room.player.store.getState().lesson
      room.run((2 * round + 6) * secondsPerBeat)
      const { device } = room.fake
      const first = Math.round((room.driver.toSound(anchor.now) ?? 0) * 48_000)
      const later = Math.round(round * secondsPerBeat * 48_000)
      // 50 ms before the beat and 150 after it; a whole word later they come again. Counted in, the same word as in a round.
      const [lead, length] = [2400, 9600]
      const again = device.mix(first - lead + later, first - lead + later + length)
      const off = device.mix(first - lead, first - lead + length).map((v, k) => Math.abs(v - (again[k] ?? 0)))
      expect(again.reduce((most, v) => Math.max(most, Math.abs(v)), 0)).toBeGreaterThan(0.1)
      expect(off.reduce((most, v) => Math.max(most, v), 0)).toBeLessThan(0.005)
      expect([room.jump < 0.001, room.back >= 0]).toEqual([true, true])
    }
    // From within the figure nobody waits.
    const room = soundRoom([SQQ], { latency: 0.04 }, { ...clicks, count: 'counting' })
    room.act(() => room.conductor.set({ on: true }))
    room.conductor.say(madeVoice())
    room.run(1)
    room.player.seek(1)
    room.act(() => room.player.play(0))
    expect(room.player.clock().anchor.now - room.driver.now()).toBeLessThan(0.1)
  })
  test('without sound the picture begins at once', () => {
    const room = soundRoom([WALTZ])
    const before = room.player.beatNow()
    room.player.play(0)
    room.run(1 / 60)
    expect(room.player.beatNow()).toBeGreaterThan(before)
  })
})

describe('a change at the end of the round', () => {
  test.each([0.01, 0.25])(
    'what sounds goes on until then, and nothing of the new tempo comes early; latency %d',
    (latency) => {
      for (const [figure, countIn, faster] of [
        [SQQ, 0, 1.3],
        [SQQ, 1, 0.8],
        [SQQ, 2, 1.3],
        [LONG, 0, 0.8],
        [LONG, 1, 1.3],
      ] as const) {
        const room = playing({ latency }, [figure])
        const { from, to } = tempi(room)
        room.cut(() => room.player.setTempo(figure === LONG ? from * 2 : (from + to) / 2))
        room.run(0.2)
        runToEnd(room, 0.3)
        const begun = room.fake.device.played.length
        const { barsPerMinute } = room.player.store.getState().session
        room.act(() => room.player.nextRound(barsPerMinute * faster, countIn))
        room.run(7)
        expectHeard(room, 8, 0, GIVING_WAY / 8)
        // One sound, and the round where it is counted in.
        expect(room.fake.device.played.length - begun).toBeLessThanOrEqual(figure === SQQ ? (countIn === 0 ? 1 : 2) : 4)
        expect(room.jump).toBeLessThan(0.001)
      }
    },
    20_000,
  )
  test('long before: it is asked for when it comes near, and what is asked for meanwhile counts', () => {
    const room = playing({ latency: 0.04 }, [LONG])
    room.cut(() => room.player.setTempo(tempi(room).from * 1.5))
    room.run(0.5)
    room.act(() => room.player.nextRound(40, 1))
    room.run(3)
    // Another tempo at once: nothing waits any more.
    room.act(() => room.player.setTempo(30))
    room.run(20)
    expectHeard(room, 20, 0, GIVING_WAY)
    room.act(() => room.player.nextRound(40, 2))
    room.run(1)
    room.act(() => room.player.nextRound(35, 1))
    room.run(30)
    expectHeard(room, 50, 0, GIVING_WAY)
  })
  test('paused, sought, switched off and on, stalled or hidden while it waits', () => {
    for (const what of ['pause', 'seek', 'sound', 'stall', 'hide', 'figure', 'offset', 'keep'] as const) {
      const room = playing({ latency: 0.04 })
      runToEnd(room, 0.4)
      room.act(() => room.player.nextRound(25, 1))
      room.run(0.1)
      room.cut(() => {
        if (what === 'pause') room.player.pause()
        if (what === 'seek') room.player.seek(1)
        if (what === 'sound') room.conductor.set({ on: false })
        if (what === 'figure') room.player.choose('waltz')
        if (what === 'offset') room.conductor.set({ offset: 0.1 })
        if (what === 'keep') expect(room.player.keepRound()).toBe(true)
      })
      if (what === 'stall') room.stall(1.7)
      if (what === 'hide') {
        room.fake.hide(1)
        room.run(3)
        room.fake.hide(null)
      }
      if (what === 'sound') {
        room.cut(() => room.run(0.2))
        room.cut(() => room.conductor.set({ on: true }))
        room.cut(() => room.run(0.4))
      }
      room.cut(() => room.player.play())
      const from = room.fake.page()
      room.run(6)
      // A listener’s offset moves what is heard; he sees it then.
      if (what === 'offset') room.conductor.set({ offset: 0 })
      else expectHeard(room, 6, what === 'sound' ? from : 0, GIVING_WAY)
      expect(room.jump).toBeLessThan(0.001)
    }
  })
})

describe('over random plays with counting in, next rounds, changes of tempo, seeks, pauses and stalls', () => {
  test('each tick once', () => {
    const change = fc.record({
      what: fc.constantFrom(
        ...(['play', 'play', 'next', 'next', 'next', 'tempo', 'seek', 'pause', 'stall', 'hide', 'end', 'end'] as const),
      ),
      part: evenly(0, 1),
      bars: fc.constantFrom(0, 1, 2),
      time: evenly(0.02, 1.5),
    })
    let [heard, counted, next] = [0, 0, 0]
    fc.assert(
      fc.property(
        fc.array(change, { minLength: 12, maxLength: 20 }),
        fc.constantFrom(0.01, 0.04, 0.25),
        fc.constantFrom(24, 60),
        fc.constantFrom(SHORT, SQQ, WALTZ),
        (list, latency, rate, figure) => {
          const room = standing({ latency }, [figure])
          const { player } = room
          for (const { what, part, bars, time } of list) {
            const { from, to } = tempi(room)
            const tempo = from + (0.3 + 0.7 * part) * (to - from)
            const countIn = bars as 0 | 1 | 2
            if (what === 'play' || !player.clock().playing) {
              room.cut(() => player.pause())
              if (bars > 0) room.cut(() => player.seek(player.store.getState().lesson.range.from))
              room.run(0.4, rate)
              room.act(() => player.play(countIn))
              if (bars > 0) counted++
            }
            if (what === 'next') {
              room.act(() => player.nextRound(tempo, countIn))
              next++
            }
            if (what === 'tempo') room.act(() => player.setTempo(tempo))
            if (what === 'seek') room.cut(() => player.seek(4 * part))
            if (what === 'pause') room.cut(() => player.pause())
            if (what === 'stall') room.stall(time)
            if (what === 'end' && player.clock().playing) runToEnd(room, 0.2)
            if (what === 'hide') {
              room.fake.hide(1)
              room.run(time, rate)
              room.fake.hide(null)
            }
            room.run(time, rate)
          }
          room.run(1)
          expectHeard(room, 1, 0, GIVING_WAY)
          heard += room.ticks().heard.length
          expect(room.back).toBeGreaterThanOrEqual(0)
          expect(room.jump).toBeLessThan(0.001)
          expect(room.fake.device.bytes()).toBeLessThanOrEqual(16_000_000)
        },
      ),
      { numRuns: 10, seed: 20261126, endOnFailure: true },
    )
    expect([heard > 150, counted > 15, next > 20]).toEqual([true, true, true])
  }, 20_000)
  test('what was asked for before a change is not heard after it: nothing lies in the past of what is asked for', () => {
    const room = playing({ latency: 0.04 }, [SHORT])
    const { played } = room.fake.device
    for (let k = 0; k < 40; k++) {
      const before = played.length
      room.act(() => room.player.nextRound(25 + k, (k % 3) as 0 | 1 | 2))
      const now = samplesNow(room)
      for (const { begins } of played.slice(before)) expect(begins).toBeGreaterThanOrEqual(Math.floor(now - 128))
      room.run(0.7)
    }
    expectHeard(room, 20, 0, GIVING_WAY)
  })
})
