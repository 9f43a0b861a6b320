import { createSpeaker, type SoundState, type Speaker } from '../../src/sound/speaker.ts'
import { type Devices, type FakeSound, fakeSound } from './fakeSound.ts'

export const RATE = 48_000
export const BLOCK = 128 / RATE

/** As a page looks, each frame. */
export function look(fake: FakeSound, speaker: Speaker, seconds: number): void {
  for (let frame = 0; frame < seconds * 60; frame++) {
    fake.wait(1 / 60)
    speaker.look()
  }
}

export function begun(devices: Devices = {}): { fake: FakeSound; speaker: Speaker; states: SoundState[] } {
  const fake = fakeSound(devices)
  const speaker = createSpeaker(fake.make, fake.page, fake.later)
  const states: SoundState[] = []
  speaker.onState(() => states.push(speaker.state))
  return { fake, speaker, states }
}

export function woken(devices: Devices = {}) {
  const all = begun(devices)
  all.speaker.wake()
  look(all.fake, all.speaker, 1)
  return all
}

/** A sound that is always 1: what comes out is how loud it is. */
export function ones(speaker: Speaker): AudioBuffer {
  const buffer = speaker.prepare(new Float32Array(4800).fill(1), RATE)
  if (buffer === null) throw new Error('there is no device')
  return buffer
}
