import { beatAt, type Clock } from '../../src/clock/clock.ts'
import { type SoundingDriver, soundingDriver } from '../../src/clock/soundingDriver.ts'
import { type Conductor, createConductor, FIRST_CHOICES, type SoundChoices } from '../../src/conductor.ts'
import { createPlayer } from '../../src/createPlayer.ts'
import type { Figure } from '../../src/figure/figure.ts'
import type { Player } from '../../src/player.ts'
import type { Lesson } from '../../src/session/lesson.ts'
import { countInTicks } from '../../src/sound/countInTicks.ts'
import type { AudioSessionHost } from '../../src/sound/silentSwitch.ts'
import { createSpeaker, type Speaker } from '../../src/sound/speaker.ts'
import { ticksOf } from '../../src/sound/ticksOf.ts'
import { seconds } from '../../src/units.ts'
import { type Devices, type FakeSound, fakeSound } from './fakeSound.ts'
import { findOnsets } from './findOnsets.ts'
import { ALL_CLICKS } from './soundedLesson.ts'

/** What the picture went by from a moment on. */
type Shown = { readonly page: number; readonly time: number; readonly clock: Clock; readonly lesson: Lesson }

/** The page without its picture: a player, what sounds with it, and a browser that is cranked by hand. */
export type SoundRoom = {
  readonly fake: FakeSound
  readonly speaker: Speaker
  readonly driver: SoundingDriver
  readonly player: Player
  readonly conductor: Conductor
  /** Does something, and notes what the picture goes by before and after it. */
  act(what: () => void): void
  /** The same, where what sounds cannot be what is shown for a little: what is on its way to the ear is heard all the same. */
  cut(what: () => void): void
  /** Frames for so long. */
  run(seconds: number, rate?: number): void
  /** Time without a frame. */
  stall(seconds: number): void
  /** By how much the driver's time went otherwise than the page's, from note to note: the worst, in seconds. */
  readonly jump: number
  /** The least that it went on, in seconds. */
  readonly back: number
  /** Ticks by the picture, and by the ear, each in seconds of the page's clock; without what lies in a cut. */
  ticks(from?: number): { readonly shown: number[]; readonly heard: number[] }
}

/** After a cut, besides the way to the ear: a click that was begun before rings out, and one may begin in its middle. */
const RINGING = 0.06

const known = new WeakMap<Lesson, number[]>()
/** Where a lesson's ticks are, in beats from the round's start. */
function placesOf(lesson: Lesson): number[] {
  const places = known.get(lesson) ?? ticksOf(lesson, ALL_CLICKS).map(({ at }) => at)
  known.set(lesson, places)
  return places
}

/** Ticks that a clock comes to between two times, in its seconds. */
function ticksBetween(clock: Clock, since: number, to: number, lessons: readonly Lesson[]): number[] {
  const { former, anchor, range, round, playing, secondsPerBeat } = clock
  if (former !== undefined && since < anchor.now)
    return [
      ...ticksBetween(former, since, Math.min(to, anchor.now), lessons),
      ...ticksBetween({ ...clock, former: undefined }, anchor.now, to, lessons),
    ]
  // Until it can be heard it stands.
  const from = Math.max(since, anchor.now)
  const lesson = lessons.findLast((one) => one.range.from === range.from && one.range.to === range.to)
  if (!playing || !(to > from) || lesson === undefined) return []
  const first = beatAt(clock, seconds(from)) - range.from
  const end = Math.min(first + (to - from) / secondsPerBeat, round === null ? range.to - range.from : Infinity)
  const countedIn = countInTicks(lesson, anchor.beat, ALL_CLICKS).flatMap(({ at }) => {
    const place = anchor.beat - range.from + at
    return place >= first - 1e-9 && place < end - 1e-9 ? [from + (place - first) * secondsPerBeat] : []
  })
  const found = placesOf(lesson).flatMap((at) => {
    const all: number[] = []
    const turn = Math.max(0, Math.ceil((first - at) / lesson.round - 1e-9))
    for (let beat = at + turn * lesson.round; beat < end - 1e-9; beat += lesson.round)
      all.push(from + (beat - first) * secondsPerBeat)
    return all
  })
  return [...countedIn, ...found].sort((a, b) => a - b)
}

export function soundRoom(
  figures: readonly Figure[],
  devices: Devices = {},
  choices: Partial<SoundChoices> = {},
  host: AudioSessionHost = {},
): SoundRoom {
  const fake = fakeSound(devices, 7, host)
  const speaker = createSpeaker(fake.make, fake.page, fake.later)
  const driver = soundingDriver(fake.driver, speaker)
  const player = createPlayer(figures, driver)
  const conductor = createConductor(...([player, speaker, driver] as const), fake.around, {
    ...FIRST_CHOICES,
    volume: 1,
    halves: true,
    ...choices,
  })
  const notes: Shown[] = []
  const cuts: { readonly from: number; readonly to: number }[] = []
  let [jump, back] = [0, Number.POSITIVE_INFINITY]

  const note = (): void => {
    const { lesson, playing } = player.store.getState()
    const before = notes.at(-1)
    const now = { page: fake.page(), time: driver.now(), clock: player.clock(), lesson }
    // It has come to its end by itself.
    if (before?.clock.playing === true && !playing) cuts.push({ from: before.page, to: now.page + RINGING })
    if (before !== undefined) {
      jump = Math.max(jump, Math.abs(now.time - before.time - (now.page - before.page)))
      back = Math.min(back, now.time - before.time)
    }
    notes.push(now)
  }
  const act = (what: () => void): void => {
    note()
    what()
    note()
  }
  note()
  return {
    ...{ fake, speaker, driver, player, conductor, act },
    cut(what) {
      const latency = fake.made.at(-1)?.latency ?? 0
      cuts.push({ from: fake.page() - 0.001, to: fake.page() + latency + RINGING })
      act(what)
    },
    run(time, rate = 60) {
      for (let frame = 0; frame < Math.round(time * rate); frame++) {
        fake.crank(1 / rate)
        note()
      }
    },
    stall(time) {
      fake.wait(time)
      note()
    },
    get jump() {
      return jump
    },
    get back() {
      return back
    },
    ticks(from = 0) {
      note()
      const { device } = fake
      const lessons = notes.map(({ lesson }) => lesson)
      const one = [...new Set(lessons)]
      const shown = notes.slice(1).flatMap((next, k) => {
        const { page, time, clock } = notes[k] as Shown
        return ticksBetween(clock, time, time + next.page - page, one).map((at) => page + at - time)
      })
      /** The page's time at which its first sample came to the ear. */
      const began = fake.page() + device.latency - device.time
      const first = Math.max(0, Math.floor((from - began - 0.2) * device.sampleRate))
      const mixed = device.mix(first, Math.floor(device.time * device.sampleRate))
      const onsets = findOnsets(mixed, device.sampleRate)
      const heard = onsets.map((at) => began + (first + at) / device.sampleRate)
      // What is on its way to the ear has not come there.
      const end = fake.page() - 0.005
      const counts = (at: number): boolean =>
        at >= from && at < end && cuts.every((cut) => at < cut.from || at > cut.to)
      return { shown: shown.filter(counts), heard: heard.filter(counts) }
    },
  }
}

/** How two lists of times differ: those of one that are in the other, one for one. @param near seconds within which two are one */
export function apart(
  shown: readonly number[],
  heard: readonly number[],
  near = 0.0005,
): { missing: number[]; more: number[]; worst: number } {
  const [missing, more]: [number[], number[]] = [[], []]
  let [a, b, worst] = [0, 0, 0]
  while (a < shown.length || b < heard.length) {
    const [one, other] = [shown[a] ?? Infinity, heard[b] ?? Infinity]
    if (Math.abs(one - other) <= near) {
      worst = Math.max(worst, Math.abs(one - other))
      a++
      b++
    } else if (one < other) missing.push(shown[a++] as number)
    else more.push(heard[b++] as number)
  }
  return { missing, more, worst }
}
