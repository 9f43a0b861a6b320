import { createStore, type StoreApi } from 'zustand/vanilla'
import { beatAt, type Clock, clockThen, isOver } from './clock/clock.ts'
import { modulo } from './clock/modulo.ts'
import { BEFORE_THE_BEAT, riseBefore } from './clock/riseBefore.ts'
import type { SoundingDriver } from './clock/soundingDriver.ts'
import type { Player } from './player.ts'
import { beginningOf, type Lesson } from './session/lesson.ts'
import { SAMPLE_RATE } from './sound/beatLasts.ts'
import { halvesBlur } from './sound/halvesBlur.ts'
import { indexAt, isRight, type Line, pieceOf, quietOf } from './sound/line.ts'
import type { PageAround } from './sound/pageAround.ts'
import { type Score, scoreOf } from './sound/scoreOf.ts'
import type { Speaker } from './sound/speaker.ts'
import type { TickChoices } from './sound/ticksOf.ts'
import type { Voice } from './sound/voice.ts'
import type { Seconds } from './units.ts'

/** What is heard, as people set it. Nobody's link or figure switches sound on. */
export type SoundChoices = {
  readonly on: boolean
  /** 0 to 1. */
  readonly volume: number
  readonly bar: boolean
  readonly beats: boolean
  /** null: as it is usual at the tempo: not where they would blur. */
  readonly halves: boolean | null
  readonly count: TickChoices['count']
  /** Seconds that are added to what the device reports. */
  readonly offset: number
  /** Also where a telephone is switched to silent; it may stop other programs' music. */
  readonly throughSwitch: boolean
}

export type Conductor = {
  readonly store: StoreApi<SoundChoices>
  set(choices: Partial<SoundChoices>): void
  /** Gives the words of the count; before, there are clicks alone. */
  say(voice: Voice): void
  /** Seconds that the device reports between sample and ear. */
  reported(): number
  /** Whether this browser can sound through a silent switch at all. */
  readonly passesSwitch: boolean
  /** What is heard just now, for whoever writes it into a file. */
  heard(): { readonly choices: TickChoices; readonly voice: Voice | null }
  close(): void
}

/** Off, quiet. */
export const FIRST_CHOICES: SoundChoices = {
  ...{ on: false, volume: 0.5, bar: true, beats: true, halves: null, count: 'off', offset: 0, throughSwitch: false },
}

/** What follows is asked for so long before it sounds: a page may stall, in seconds. */
const AHEAD = 4.5
/** While it is hidden: there timers come once a minute, and now and then a little later. */
const AHEAD_HIDDEN = 62
/** A click lasts no longer, in seconds. */
const CLICK = 0.06
/** What begins so soon is made together with what sounds before, in seconds. */
const SOON = 0.2
/** It is looked after so often without a frame or a press, in seconds. */
const LOOK = 0.25
/** So much sooner than it says, the device can still begin; in seconds. */
const SLACK = 0.024
/** One sound gives way to another before the beat on which it changes, so that the new one is there on it; in seconds. */
const RISE = 0.005

type Sounded = Score<AudioBuffer | null>
/** What has been asked for: a line, and how many of its pieces. */
type Asked = Line<AudioBuffer | null> & { queued: number }
/** What is to follow at a time that is still to come. */
type Upcoming = { readonly clock: Clock; readonly asked: Asked | null }
/** A moment by the driver's time and by the sound's, in seconds. */
type Moment = { readonly time: Seconds; readonly when: number }

/** A time on a whole sample, so that parts join without a gap. */
const onSample = (time: number): number => Math.round(time * SAMPLE_RATE) / SAMPLE_RATE

/**
 * Keeps what sounds at the beat that is shown: whatever changes (tempo, figure, loop, count, a seek, a pause), it asks what
 * the clock will show when something else can be heard, and lets that sound then. What the clock changes to at the end of a
 * round is asked for in time, and what sounds goes on until then.
 */
export function createConductor(
  player: Player,
  speaker: Speaker,
  driver: SoundingDriver,
  page: PageAround,
  choices: SoundChoices = FIRST_CHOICES,
): Conductor {
  const store = createStore<SoundChoices>(() => choices)
  let current: Asked | null = null
  /** Nobody has danced since: what begins is heard whole, and waits for that. */
  let stood = true
  let upcoming: Upcoming | null = null
  let voice: Voice | null = null
  /** What was made last, for now and for what is to come: after a pause it is there at once. */
  let kept: readonly { readonly key: string; score: Sounded; readonly lesson: Lesson; readonly said: Voice | null }[] =
    []

  const choicesAt = ({ secondsPerBeat }: Clock): TickChoices => {
    const { counting } = player.store.getState().session
    const { bar, beats, halves, count } = store.getState()
    const blurs = halvesBlur(secondsPerBeat)
    return { counting, count: voice === null ? 'off' : count, bar, beats, halves: halves ?? !blurs, ands: !blurs }
  }

  /** So much earlier than its beat the first sound begins, in seconds. */
  const breath = (): number => (voice === null || store.getState().count === 'off' ? 0 : BEFORE_THE_BEAT)

  const scoreAt = (clock: Clock): Sounded => {
    const { lesson } = player.store.getState()
    const { figure, schedule, range, round, repeats, steps } = lesson
    const said = voice
    const tickChoices = choicesAt(clock)
    const key = JSON.stringify([
      ...[figure.id, schedule.timing, range, round, repeats, steps, schedule.figure.role],
      ...[tickChoices, clock.secondsPerBeat],
    ])
    const sounds = (score: Sounded): boolean => score === current?.score || score === upcoming?.asked?.score
    const again = kept.find(
      (one) => one.key === key && one.said === said && (one.lesson === lesson || sounds(one.score)),
    )
    if (again !== undefined) return again.score
    const prepare = (samples: Float32Array) => speaker.prepare(samples, SAMPLE_RATE)
    const score = scoreOf(lesson, clock.secondsPerBeat, tickChoices, said, prepare)
    kept = [...kept.filter((one) => sounds(one.score)).slice(-1), { key, score, lesson, said }]
    return score
  }

  /** Where in the round a clock is at a time, in seconds; below 0: it is counted in. Danced once it counts on after its end. */
  const intoAt = (clock: Clock, { lasts, secondsPerBeat }: Sounded, time: Seconds): number => {
    const { lesson } = player.store.getState()
    const at = beatAt({ ...clock, round: clock.round ?? lesson.round, former: undefined }, time)
    // What stands until it begins can be heard before that: the breath before a word.
    const before = clock.playing && clock.former === undefined ? Math.max(0, clock.anchor.now - time) : 0
    const into = (at - lesson.range.from) * secondsPerBeat - before
    return into < 0 ? into : modulo(into, lasts)
  }

  const countsIn = ({ anchor, range }: Clock): number => Math.max(0, range.from - anchor.beat)

  /** The next moment at which something else can be heard; null: nothing is. */
  const soonest = (): Moment | null => {
    const time = driver.next?.() ?? driver.now()
    const when = driver.toSound(time)
    return when === null ? null : { time, when }
  }

  /** What of a line begins soon. @param now the sound's time @param until nothing that begins then or later is asked for */
  const queue = (asked: Asked, now: number, until = Number.POSITIVE_INFINITY): void => {
    for (;;) {
      const piece = pieceOf(asked, asked.queued)
      const ahead = page.hidden() ? AHEAD_HIDDEN : AHEAD
      if (piece === null || piece.begins > now + ahead || piece.begins >= until) return
      // A page that was away long does not make what is past.
      if (piece.ends > now || piece.loops) {
        const { buffer } = asked.score.part(piece.index)
        if (buffer !== null) speaker.queue({ buffer, when: piece.begins, into: 0, loops: piece.loops })
      }
      asked.queued++
    }
  }

  /** Lets a line sound in the place of all that was asked for. @param before what sounds until then */
  const begin = (line: Line<AudioBuffer | null>, before: Line<AudioBuffer | null> | null): Asked => {
    const { score, when, into } = line
    const quiet = quietOf(line, before, CLICK)
    if (current === null) page.silentSwitch.pass(store.getState().throughSwitch)
    if (into < 0) {
      const { buffer, lasts } = score.countIn(line.countsIn)
      if (buffer !== null) speaker.start({ buffer, when, into: lasts + into, loops: false, quiet })
      return { ...line, queued: 0 }
    }
    const index = indexAt(score, into)
    const { buffer } = score.part(index)
    const loops = score.parts === 1 && score.repeats
    if (buffer !== null) speaker.start({ buffer, when, into: into - score.startOf(index), loops, quiet })
    return { ...line, queued: index + 1 }
  }

  /**
   * A score as a clock has it, from a moment on, on whole samples.
   * @param rise seconds sooner, so that it has risen at the moment
   */
  const lineOf = (score: Sounded, clock: Clock, { time, when }: Moment, rise: number): Line<AudioBuffer | null> => {
    const from = onSample(when - rise)
    const into = onSample(intoAt(clock, score, time) + from - when)
    // What comes before a first round is the end of no other one.
    const first = into < 0 && (countsIn(clock) > 0 || !score.repeats || (current === null && rise > RISE))
    return { score, countsIn: countsIn(clock), when: from, into: first ? into : modulo(into, score.lasts) }
  }

  /** Whether what changed at a time of the sound's cannot be had from then on any more. @param rise seconds before it */
  const isLate = (changed: number, at: Moment, rise = RISE): boolean => changed - rise < at.when - SLACK

  /** What has just been asked to play, and cannot be heard whole any more. */
  const comesLate = ({ anchor, range }: Clock, at: Moment): boolean => {
    const rise = anchor.beat > range.from ? RISE : Math.max(RISE, breath())
    return stood && isLate(driver.toSound(anchor.now) ?? at.when, at, rise)
  }

  /** What the clock shows from now on. */
  const start = (score: Sounded, clock: Clock, at: Moment): void => {
    // From the moment on which it was changed, where that can still be had: then nothing of its first click is lost.
    const changed = driver.toSound(clock.anchor.now) ?? at.when
    const moment = isLate(changed, at) ? at : { time: clock.anchor.now, when: changed }
    const rise = Math.min(BEFORE_THE_BEAT, Math.max(RISE, changed - at.when))
    current = begin(lineOf(score, clock, moment, moment === at ? 0 : rise), current)
  }

  /** What the clock changes to later on; asked for when it comes near. */
  const prepare = (clock: Clock, now: Moment): void => {
    const when = driver.toSound(clock.anchor.now)
    if (current === null || when === null) return
    const far = page.hidden() ? AHEAD_HIDDEN : AHEAD
    if (upcoming?.clock !== clock) upcoming = { clock, asked: null }
    if (upcoming.asked !== null || when > now.when + far) {
      queue(current, now.when, when)
      return
    }
    queue(current, when, when)
    const score = scoreAt(clock)
    const shorter = Math.min(score.secondsPerBeat, current.score.secondsPerBeat)
    const rise = Math.min(riseBefore(shorter), Math.max(RISE, when - now.when))
    const line = lineOf(score, clock, { time: clock.anchor.now, when }, rise)
    upcoming = { clock, asked: begin(line, current) }
  }

  const hush = (): void => {
    if (current === null) return
    current = null
    upcoming = null
    speaker.silence()
    page.silentSwitch.pass(false)
  }

  const follow = (): void => {
    speaker.look()
    const clock = player.clock()
    const now = store.getState().on && clock.playing && speaker.state === 'sounding' ? soonest() : null
    if (now === null) {
      stood = !clock.playing
      hush()
      return
    }
    const then = clockThen(clock, now.time)
    // What was to come is there; or something else is to come, and what was asked for must not.
    const came = upcoming !== null && upcoming.clock === then
    const gone = upcoming !== null && upcoming.clock !== clock
    if (came && upcoming?.asked != null) current = upcoming.asked
    if (came || gone) upcoming = null
    // Making it takes its time, so it comes before the question when it can be heard.
    const score = scoreAt(then)
    const asked = soonest()
    if (asked === null) return
    const into = intoAt(then, score, asked.time)
    const wrong = !isRight(current, score, asked.when, into)
    if (gone || wrong) {
      if (into < 0) score.countIn(countsIn(then))
      else for (const later of [0, SOON]) score.part(indexAt(score, modulo(into + later, score.lasts)))
      const at = soonest()
      if (at === null || isOver(then, at.time)) {
        hush()
        return
      }
      if (comesLate(then, at)) {
        stood = false
        player.putOff()
        follow()
        return
      }
      stood = false
      start(score, then, at)
    }
    if (then !== clock) prepare(clock, asked)
    else if (current !== null) queue(current, asked.when)
    if (upcoming?.asked != null) queue(upcoming.asked, asked.when)
  }

  /** While nobody dances: makes what is to sound at the next play, so that it is there on the first beat. */
  const makeReady = (): void => {
    const clock = player.clock()
    if (clock.playing || speaker.state !== 'sounding') return
    const { lesson, session } = player.store.getState()
    const score = scoreAt(clock)
    score.part(indexAt(score, intoAt(clock, score, clock.anchor.now)))
    const { from } = lesson.range
    if (clock.anchor.beat === from && (session.countIn > 0 || breath() > 0))
      score.countIn(from - beginningOf(lesson, session.countIn))
  }

  const stops = [
    page.every(LOOK, () => {
      if (!store.getState().on) return
      follow()
      makeReady()
    }),
    page.onHidden(follow),
    player.store.subscribe(follow),
    player.onGrid(follow),
    speaker.onState(follow),
    store.subscribe((now, before) => {
      if (now.volume !== before.volume) speaker.setVolume(now.volume)
      if (now.offset !== before.offset) speaker.setOffset(now.offset)
      if (current !== null) page.silentSwitch.pass(now.throughSwitch)
      driver.setBreath(breath())
      follow()
    }),
  ]
  driver.setBreath(breath())
  speaker.setVolume(choices.volume)
  speaker.setOffset(choices.offset)
  follow()

  return {
    store,
    set(next) {
      // Within the press: browsers allow sound in no other way.
      if (next.on === true) speaker.wake()
      if (next.on === false) speaker.sleep()
      store.setState(next)
    },
    say(words) {
      voice = words
      driver.setBreath(breath())
      // Nothing has been chosen, but what is heard is another: whoever shows it looks again.
      store.setState({})
    },
    reported: () => speaker.reported,
    passesSwitch: page.silentSwitch.offered,
    heard: () => ({ choices: choicesAt(player.clock()), voice }),
    close() {
      for (const stop of stops) stop()
      hush()
      speaker.close()
    },
  }
}
