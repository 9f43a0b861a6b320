import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Sounding } from '../../src/sound/speaker.ts'
import { evenly } from '../tools/evenly.ts'
import type { Devices, FakeSound } from '../tools/fakeSound.ts'
import { BLOCK, begun, look, ones, RATE, woken } from '../tools/wokenSpeaker.ts'

describe('createSpeaker(make, page): what it says is true', () => {
  test('before a press nothing is made, resumed or said, whatever it is asked for', () => {
    const { fake, speaker, states } = begun()
    speaker.setVolume(1)
    speaker.setOffset(0.1)
    speaker.silence()
    speaker.sleep()
    look(fake, speaker, 2)
    expect([speaker.prepare(new Float32Array(5), RATE), speaker.heardAt(9), speaker.earliest()]).toEqual([
      ...[null, null, null],
    ])
    speaker.start({ buffer: {} as AudioBuffer, when: 0, into: 0, loops: true })
    speaker.queue({ buffer: {} as AudioBuffer, when: 0, into: 0, loops: true })
    expect([fake.made.length, speaker.state, speaker.reported, states]).toEqual([0, 'off', 0, []])
  })
  test.each(['none', 'throws'] as const)('missing: the browser’s is "%s"; a later press finds one', (browser) => {
    const { fake, speaker, states } = begun()
    fake.browser = browser
    speaker.wake()
    look(fake, speaker, 1)
    expect([speaker.state, speaker.heardAt(fake.page()), speaker.earliest()]).toEqual(['missing', null, null])
    fake.browser = 'good'
    speaker.wake()
    look(fake, speaker, 1)
    expect(states).toEqual(['missing', 'waiting', 'sounding'])
  })
  test.each<[string, Devices]>([
    ['suspended, and resume never settles', { resuming: 'never' }],
    ['suspended, and resume rejects', { resuming: 'rejects' }],
    ['interrupted by a call', { state: 'interrupted', called: true }],
    ['closed', { state: 'closed' }],
    ['running with a clock that stands at 0', { state: 'running', frozen: true }],
    ['running after resume, with a clock that stands', { resuming: 'stands' }],
  ])('waiting: a device that is %s; one press when it can: sounding, with one device', async (_, devices) => {
    const { fake, speaker } = woken(devices)
    expect([speaker.state, speaker.heardAt(fake.page()), speaker.earliest()]).toEqual(['waiting', null, null])
    // A promise that is broken is not left lying.
    await Promise.resolve()
    fake.devices = {}
    Object.assign(fake.device, { resuming: 'settles', called: false })
    speaker.wake()
    look(fake, speaker, 1)
    expect(speaker.state).toBe('sounding')
    expect(fake.made.filter(({ state }) => state !== 'closed').length).toBe(1)
  })
  test('two presses at once make one device', () => {
    const { fake, speaker } = begun()
    speaker.wake()
    speaker.wake()
    look(fake, speaker, 1)
    speaker.wake()
    expect([fake.made.length, speaker.state]).toEqual([1, 'sounding'])
  })
  test('a call, and after it: by itself where the device goes on by itself', () => {
    const { fake, speaker, states } = woken()
    fake.device.set('interrupted')
    look(fake, speaker, 5)
    expect([speaker.state, speaker.heardAt(fake.page())]).toEqual(['waiting', null])
    // What it says of its output is from before the call.
    fake.device.stamps = 'old'
    fake.device.set('running')
    look(fake, speaker, 0.2)
    expect(speaker.heardAt(fake.page())).toBeCloseTo(fake.device.time, 2)
    fake.device.stamps = 'exact'
    look(fake, speaker, 2)
    expect(speaker.heardAt(fake.page())).toBeCloseTo(fake.device.time - fake.device.latency, 3)
    expect(states).toEqual(['waiting', 'sounding', 'waiting', 'sounding'])
  })
  test('a clock that stands: "waiting" after 0.3 s and not before, also where stamps go on to be told; a press: a new one', () => {
    for (const stamps of ['exact', 'zeros', 'old'] as const) {
      const { fake, speaker } = woken({ stamps, says: 0.04 })
      fake.device.frozen = true
      look(fake, speaker, 0.28)
      expect(speaker.state).toBe('sounding')
      look(fake, speaker, 0.07)
      const states = Array.from({ length: 60 }, () => {
        look(fake, speaker, 1 / 60)
        return speaker.state
      })
      expect([...new Set(states)]).toEqual(['waiting'])
      const first = fake.device
      speaker.wake()
      look(fake, speaker, 0.5)
      expect([first.state, fake.made.length, speaker.state]).toEqual(['closed', 2, 'sounding'])
    }
  })
  test('a page that stalls for seconds, or sleeps, finds nothing standing', () => {
    const { fake, speaker, states } = woken()
    for (const stall of [0.4, 3, 600]) {
      fake.wait(stall)
      speaker.look()
      look(fake, speaker, 0.1)
    }
    expect(states).toEqual(['waiting', 'sounding'])
  })
  test('any events in any order: "sounding" is said only while a device runs, and not 0.35 s after its clock last moved', () => {
    const event = fc.constantFrom(
      ...([
        'wake',
        'wake',
        'sleep',
        'look',
        'call',
        'end',
        'freeze',
        'thaw',
        'close',
        'none',
        'good',
        'stands',
      ] as const),
    )
    fc.assert(
      fc.property(fc.array(event, { maxLength: 40 }), (events) => {
        const { fake, speaker } = begun()
        let told = speaker.state
        speaker.onState(() => {
          told = speaker.state
        })
        for (const one of events) {
          const device = fake.made.at(-1)
          if (one === 'wake') speaker.wake()
          if (one === 'sleep') speaker.sleep()
          if (one === 'look') look(fake, speaker, 0.5)
          if (one === 'call' && device?.state === 'running') device.set('interrupted')
          if (one === 'end' && device?.state === 'interrupted') device.set('running')
          if (one === 'freeze' && device !== undefined) device.frozen = true
          if (one === 'thaw' && device !== undefined) device.frozen = false
          if (one === 'close') device?.context.close().catch(() => {})
          if (one === 'none') fake.browser = 'none'
          if (one === 'good') Object.assign(fake, { browser: 'good', devices: {} })
          if (one === 'stands') fake.devices = { resuming: 'stands' }
          look(fake, speaker, 0.35)
          const last = fake.made.at(-1)
          const runs = last?.state === 'running' && !last.frozen
          expect(speaker.state === 'sounding').toBe(runs)
          expect(told).toBe(speaker.state)
          expect(fake.made.filter(({ state }) => state !== 'closed').length).toBeLessThanOrEqual(1)
        }
      }),
      { numRuns: 300, seed: 20261125 },
    )
  })
})

describe('heardAt(page), earliest(): what is seen is what is heard', () => {
  /** Told less true; with what the listener has added. */
  const off = ({ fake, speaker }: ReturnType<typeof woken>): number =>
    (speaker.heardAt(fake.page()) ?? Number.NaN) - (fake.device.time - fake.device.latency)

  test.each([0, 0.015, 0.25])('by the device’s own word, at %s s between sample and ear', (latency) => {
    for (const says of [undefined, Number.NaN, 0, latency, -1, Number.POSITIVE_INFINITY]) {
      const all = woken({ latency, says })
      expect(Math.abs(off(all))).toBeLessThan(0.0001)
      expect(Number.isFinite(all.speaker.reported) && all.speaker.reported >= 0).toBe(true)
    }
  })
  test.each(['zeros', 'undefined', 'not a number', 'old'] as const)(
    'by its clock and a finite latency, where its word is "%s"',
    (stamps) => {
      for (const says of [0, 0.015, 0.25]) {
        const all = woken({ stamps, says, latency: says })
        expect(all.speaker.reported).toBe(says)
        // The clock is a block behind at most.
        expect(off(all)).toBeLessThanOrEqual(0.0001)
        expect(off(all)).toBeGreaterThan(-BLOCK - 0.0001)
      }
      for (const says of [undefined, Number.NaN, -1, Number.POSITIVE_INFINITY]) {
        const all = woken({ stamps, says, latency: 0 })
        expect(all.speaker.reported).toBe(0)
        expect(Math.abs(off(all))).toBeLessThan(BLOCK + 0.0001)
      }
    },
  )
  test('a latency that changes (another pair of earphones) is found', () => {
    for (const stamps of ['exact', 'zeros'] as const) {
      const all = woken({ stamps, latency: 0.015, says: 0.015 })
      for (const latency of [0.25, 0.03, 0.06, 0]) {
        Object.assign(all.fake.device, { latency, says: latency })
        look(all.fake, all.speaker, 2.5)
        expect(Math.abs(off(all))).toBeLessThan(BLOCK + 0.0001)
      }
    }
  })
  test.each([0, 0.2, -0.03])(
    'a listener’s offset of %s s is added once: what is asked for is heard when it is told',
    (offset) => {
      const all = begun({ latency: 0.05, says: 0.05 })
      const { fake, speaker } = all
      speaker.setOffset(offset)
      speaker.wake()
      look(fake, speaker, 1)
      expect(off(all)).toBeCloseTo(-offset, 4)
      expect(speaker.reported).toBe(0.05)
      const when = (speaker.earliest() ?? 0) + 0.2
      speaker.start({ buffer: ones(speaker), when, into: 0, loops: true })
      // Its first sample comes to the ear after the latency and what the listener has found besides.
      const [played] = fake.device.played
      const wait = (played?.begins ?? 0) / RATE + fake.device.latency + offset - fake.device.time
      fake.wait(wait)
      expect(speaker.heardAt(fake.page())).toBeCloseTo(when, 3)
    },
  )
  test('earliest: soon, and never so soon that the device is late', () => {
    const { fake, speaker } = woken()
    for (let k = 0; k < 500; k++) {
      fake.wait(0.00123)
      const when = speaker.earliest() ?? 0
      expect(when - fake.device.time).toBeLessThan(0.05)
      expect(when - fake.device.time).toBeGreaterThan(2 * BLOCK)
    }
  })
})

describe('start, queue, silence: one sound at a time, and nothing snaps', () => {
  /** The largest step in what came out, and the loudest. */
  function heard(fake: FakeSound): { step: number; most: number; last: number } {
    const mixed = fake.device.mix(0, Math.floor(fake.device.time * RATE))
    let [step, most] = [0, 0]
    for (let k = 1; k < mixed.length; k++) {
      step = Math.max(step, Math.abs((mixed[k] ?? 0) - (mixed[k - 1] ?? 0)))
      most = Math.max(most, mixed[k] ?? 0)
    }
    return { step, most, last: mixed.at(-1) ?? Number.NaN }
  }

  test('changes that come quicker than they sound: never two, never a jump, and at the end the last', () => {
    const change = fc.record({
      what: fc.constantFrom('start', 'start', 'start', 'silence'),
      /** From the earliest on; below 0: too late. */
      later: fc.oneof(fc.constant(0), evenly(-0.2, 0.02)),
      wait: fc.oneof(fc.constant(0), evenly(0, 0.02), fc.constant(0.1)),
    })
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 12 }), (changes) => {
        const { fake, speaker } = woken()
        speaker.setVolume(1)
        for (const { what, later, wait } of changes) {
          const when = (speaker.earliest() ?? 0) + later
          if (what === 'silence') speaker.silence()
          else speaker.start({ buffer: ones(speaker), when, into: 0, loops: true })
          fake.wait(wait)
        }
        fake.wait(0.3)
        const { step, most, last } = heard(fake)
        expect(most).toBeLessThanOrEqual(1 + 1e-6)
        // From nothing to full in 4 ms; two may go the same way.
        expect(step).toBeLessThanOrEqual(2 / (0.004 * RATE) + 1e-6)
        expect(last).toBeCloseTo(changes.at(-1)?.what === 'silence' ? 0 : 1, 6)
        expect(fake.device.played.filter(({ ends }) => ends > fake.device.time * RATE).length).toBeLessThanOrEqual(1)
      }),
      { numRuns: 200, seed: 20261125 },
    )
  })
  test('queued sounds follow each other to the sample; one that comes too late rises softly, farther on', () => {
    const { fake, speaker } = woken()
    speaker.setVolume(1)
    const when = Math.ceil(((speaker.earliest() ?? 0) + 0.01) * RATE) / RATE
    const buffer = ones(speaker)
    const sounding = (k: number): Sounding => ({ buffer, when: when + k * 0.1, into: 0, loops: false })
    speaker.start(sounding(0))
    for (const k of [1, 2]) speaker.queue(sounding(k))
    const lasting = fake.device.played
    expect(lasting.map(({ begins }, k) => begins - (lasting[k - 1]?.ends ?? begins))).toEqual([0, 0, 0])
    fake.wait(0.2)
    expect(heard(fake)).toEqual({ step: expect.closeTo(1 / (0.004 * RATE), 4), most: expect.closeTo(1, 6), last: 1 })
    fake.wait(0.5)
    const late = Math.floor(fake.device.time * RATE)
    speaker.queue({ buffer, when: fake.device.time - 0.05, into: 0, loops: false })
    speaker.queue({ buffer, when: fake.device.time - 0.2, into: 0, loops: false })
    fake.wait(0.2)
    expect(lasting.length).toBe(4)
    // 50 ms late, and the 5 ms that the device needs.
    expect((lasting[3]?.into ?? 0) / RATE).toBeCloseTo(0.055, 2)
    const risen = fake.device.mix(late, late + 2000)
    expect(Math.max(...risen.map((v, k) => v - (risen[k - 1] ?? 0)))).toBeLessThan(0.01)
  })
  test.each([
    [1, 0.009],
    [3, 0.006],
    [4, 0.03],
  ])(
    'a page held up between question and order, %s times %s s: what sounds is where it should be, and heard once',
    (times, held) => {
      const { fake, speaker } = woken()
      speaker.setVolume(1)
      const ramp = speaker.prepare(
        Float32Array.from({ length: 48_000 }, (_, k) => k / 48_000),
        RATE,
      )
      if (ramp === null) throw new Error('there is no device')
      let left = times
      fake.device.starting = () => {
        if (left-- > 0) fake.busy(held)
      }
      const when = fake.device.time
      speaker.start({ buffer: ramp, when, into: 0, loops: true })
      fake.device.starting = () => {}
      fake.wait(0.5)
      const at = Math.floor(fake.device.time * RATE) - 100
      // It was to be 0 at `when`: wherever it began, it is as far as if it had begun then.
      expect(fake.device.mix(at, at + 1)[0]).toBeCloseTo(at / RATE - when, 4)
      expect(fake.device.played.filter(({ ends }) => ends > at).length).toBe(1)
    },
  )
  test('after sleep nothing sounds, and nothing of before when it is woken again', () => {
    const { fake, speaker } = woken()
    speaker.start({ buffer: ones(speaker), when: speaker.earliest() ?? 0, into: 0, loops: true })
    fake.wait(0.2)
    const from = Math.floor(fake.device.time * RATE) - 480
    speaker.sleep()
    expect([speaker.state, fake.device.state]).toEqual(['off', 'running'])
    fake.wait(0.15)
    expect(fake.device.state).toBe('closed')
    // It gave way within 4 ms, with no step.
    const mixed = fake.device.mix(from, from + 4800)
    expect(mixed[0]).toBeGreaterThan(0.4)
    expect(Math.max(...mixed.map((v, k) => Math.abs(v - (mixed[k - 1] ?? v))))).toBeLessThan(1 / (0.004 * RATE))
    expect(mixed.subarray(480 + 400).every((sample) => sample === 0)).toBe(true)
    speaker.wake()
    look(fake, speaker, 1)
    expect([speaker.state, fake.made.length, fake.device.played.length]).toEqual(['sounding', 2, 0])
  })
  test('woken before the device is closed: the same one goes on, and what sounded before does not', () => {
    const { fake, speaker } = woken({ latency: 0.2, says: 0.2 })
    const buffer = ones(speaker)
    speaker.start({ buffer, when: speaker.earliest() ?? 0, into: 0, loops: true })
    fake.wait(0.2)
    speaker.sleep()
    fake.wait(0.05)
    speaker.sleep()
    speaker.wake()
    fake.wait(0.5)
    expect([speaker.state, fake.made.length, fake.device.state]).toEqual(['sounding', 1, 'running'])
    const now = Math.floor(fake.device.time * RATE)
    expect(fake.device.mix(now - 4800, now).every((sample) => sample === 0)).toBe(true)
    speaker.start({ buffer, when: speaker.earliest() ?? 0, into: 0, loops: true })
    fake.wait(0.2)
    expect(fake.device.mix(now + 4800, now + 4801)[0]).toBeCloseTo(0.5, 6)
    speaker.close()
    expect(fake.device.state).toBe('closed')
  })
})
