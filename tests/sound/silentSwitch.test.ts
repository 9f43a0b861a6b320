import { describe, expect, test } from 'vitest'
import { type AudioSessionHost, silentSwitch } from '../../src/sound/silentSwitch.ts'
import { WALTZ } from '../tools/playingRoom.ts'
import { soundRoom } from '../tools/soundRoom.ts'

/** A browser's audio session that writes down what was set. */
function session(): AudioSessionHost & { readonly set: string[] } {
  const set: string[] = []
  return {
    set,
    audioSession: {
      get type() {
        return set.at(-1) ?? 'auto'
      },
      set type(next) {
        set.push(next)
      },
    },
  }
}
const throwing: AudioSessionHost = {
  get audioSession(): never {
    throw new Error('not allowed')
  },
}
const refusing: AudioSessionHost = {
  audioSession: {
    get type() {
      return 'auto'
    },
    set type(_) {
      throw new Error('not supported')
    },
  },
}

describe('silentSwitch(host)', () => {
  test('offered where the browser has it, and nowhere else', () => {
    expect([session(), refusing, {}, throwing].map((host) => silentSwitch(host).offered)).toEqual([
      ...[true, true, false, false],
    ])
  })
  test('where it is not there, throws or refuses, nothing happens', () => {
    for (const host of [{}, throwing, refusing]) {
      const one = silentSwitch(host)
      expect(() => [one.pass(true), one.pass(false)]).not.toThrow()
    }
  })
  test('each change is told once', () => {
    const host = session()
    const one = silentSwitch(host)
    for (const through of [false, true, true, false, false, true]) one.pass(through)
    expect(host.set).toEqual(['playback', 'auto', 'playback'])
  })
})

describe('the conductor and the silent switch', () => {
  const room = (host: AudioSessionHost, throughSwitch: boolean) => soundRoom([WALTZ], {}, { throughSwitch }, host)

  test('nothing is ever set without the option', () => {
    const host = session()
    const { conductor, player, run } = room(host, false)
    conductor.set({ on: true })
    run(1)
    player.play()
    run(2)
    player.pause()
    run(1)
    expect([host.set, conductor.passesSwitch]).toEqual([[], true])
  })
  test('only while something sounds: set with its beginning, put back with its end', () => {
    const host = session()
    const { conductor, player, run, fake } = room(host, true)
    run(1)
    player.play()
    run(1)
    // It plays without sound; then with it.
    expect(host.set).toEqual([])
    conductor.set({ on: true })
    expect(host.set).toEqual([])
    run(1)
    expect(host.set).toEqual(['playback'])
    player.setTempo(25)
    player.seek(1)
    run(1)
    expect(host.set).toEqual(['playback'])
    player.pause()
    expect(host.set).toEqual(['playback', 'auto'])
    player.play()
    run(1)
    conductor.set({ on: false })
    expect(host.set).toEqual(['playback', 'auto', 'playback', 'auto'])
    conductor.set({ on: true })
    run(1)
    // Switched off while it sounds, and on again.
    conductor.set({ throughSwitch: false })
    conductor.set({ throughSwitch: true })
    fake.device.set('interrupted')
    run(0.1)
    expect(host.set.slice(4)).toEqual(['playback', 'auto', 'playback', 'auto'])
    conductor.close()
  })
  test('a browser that has none, throws or refuses: it sounds all the same', () => {
    for (const host of [{}, throwing, refusing]) {
      const { conductor, player, run, speaker, fake } = room(host, true)
      conductor.set({ on: true })
      run(1)
      player.play()
      run(1)
      expect([speaker.state, fake.device.played.length]).toEqual(['sounding', 1])
      expect(conductor.passesSwitch).toBe(host === refusing)
    }
  })
})
