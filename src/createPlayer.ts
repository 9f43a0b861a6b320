import { createStore } from 'zustand/vanilla'
import { beatAt, type Clock, clockThen, isOver, paused, putOff, soughtTo } from './clock/clock.ts'
import type { Driver } from './clock/driver.ts'
import { riseBefore } from './clock/riseBefore.ts'
import { speedOf } from './dance/speed.ts'
import type { Figure } from './figure/figure.ts'
import { type OwnFigure, ownFigure, withOwn } from './figure/ownFigure.ts'
import type { Player, PlayerState } from './player.ts'
import { createScreen } from './screen.ts'
import { createListeners } from './session/createListeners.ts'
import { leadsToSame, lessonOf } from './session/lesson.ts'
import { atNextRound, begun, carriedOver, keptToMusic, lessonClock, shownAt } from './session/lessonClock.ts'
import { loopRange } from './session/loopRange.ts'
import { rehearse } from './session/rehearse.ts'
import {
  newSession,
  revealed,
  type Session,
  withBeat,
  withFigure,
  withLoop,
  withNamesOff,
  withOrder,
  withPart,
  withSteps,
  withTempo,
  withTiming,
} from './session/session.ts'
import { shuffled } from './session/shuffled.ts'
import { stepsAt } from './session/stepsAt.ts'
import { beatLasts } from './sound/beatLasts.ts'
import type { CountInBars } from './timing/countIn.ts'
import { gridPointBefore, nearestGridPoint } from './timing/grid.ts'
import { type Beat, beat, type Seconds, seconds } from './units.ts'

/** What takes another sound's place is asked for a little sooner, in seconds. */
const ASKED = 0.005

/**
 * The whole pipeline: session + figure → lesson → paged panels → at a beat: frames → stage. Playing only chooses the beat.
 * @param figures at least one; the first is on the screen first
 * @throws RangeError when there is no figure
 */
export function createPlayer(figures: readonly Figure[], driver: Driver): Player {
  const first = figures[0]
  if (first === undefined) throw new RangeError('a player needs at least one figure')
  let figure = first

  // 1. What was chosen, and what follows from it.
  const opening = newSession(figure, beat(0))
  const lesson = lessonOf(opening, figure)
  const store = createStore<PlayerState>(() => ({
    session: withBeat(opening, lesson.range.from),
    lesson,
    playing: false,
    along: null,
    asked: false,
    own: [],
  }))
  /** What was asked for at the next round: its clock, and the bars a minute until then. */
  let toCome: { readonly clock: Clock; readonly until: number } | null = null
  let clock = lessonClock(lesson, beatLasts(lesson, opening.barsPerMinute), driver.now())

  // 2. Where it is drawn.
  const screen = createScreen()
  const gridListeners = createListeners<Beat>()
  let toldAt: Beat = lesson.range.from

  const session = (): Session => store.getState().session
  /** The earliest time at which what is heard can be changed; now, where nothing is heard. */
  const soonest = (): Seconds => driver.next?.() ?? driver.now()
  /** The same for what begins out of silence. */
  const fromSilence = (): Seconds => driver.first?.() ?? soonest()
  /** When a change holds. What sounds already goes on; nothing waits where nothing plays; what is to begin begins first. */
  const changesAt = (): Seconds => {
    if (!clock.playing) return driver.now()
    const soon = soonest()
    const then = clockThen(clock, soon)
    return then.former === undefined ? seconds(Math.max(soon, then.anchor.now)) : soon
  }

  const speedNow = (): number => speedOf(store.getState().lesson.dance, session().barsPerMinute)
  const framePanels = (): void => screen.frame(session(), store.getState().lesson, beatNow())

  // 3. One beat → one picture.
  const drawNow = (): void => screen.draw(shownAt(store.getState().lesson, beatNow()))
  const beatNow = (): Beat => beatAt(clock, driver.now())
  const gridBeat = (): Beat => gridPointBefore(beatNow(), store.getState().lesson.schedule.grid)
  function tellGrid(always: boolean): void {
    const at = gridBeat()
    if (!always && at === toldAt) return
    toldAt = at
    gridListeners.tell(at)
  }

  /** Whether a picture has been drawn since it plays. */
  let seen = true
  function frame(): void {
    seen = true
    if (isOver(clock, driver.now())) {
      pause()
      return
    }
    drawNow()
    tellGrid(false)
  }

  // 4. What people do.
  /** The same figure, otherwise shown. At another tempo it keeps to no music, unless to that which is given. */
  function changed(next: Session, music?: Seconds): void {
    const before = store.getState()
    const along = music ?? (next.barsPerMinute === before.session.barsPerMinute ? before.along : null)
    const sameLesson = leadsToSame(next, before.session)
    const after = sameLesson ? before.lesson : lessonOf(next, figure)
    const when = changesAt()
    clock = carriedOver(clock, { before: before.lesson, after }, beatLasts(after, next.barsPerMinute), when)
    clock = keptToMusic(clock, after, along, when)
    const asked = !next.names || (before.asked && next.order === before.session.order)
    store.setState({ session: next, lesson: after, along, asked })
    if (!sameLesson || next.names !== before.session.names) framePanels()
    drawNow()
    tellGrid(true)
  }

  /** @throws RangeError when there is no such figure */
  function known(figureId: string): Figure {
    const chosen = [...figures, ...store.getState().own.map((one) => one.figure)].find(({ id }) => id === figureId)
    if (chosen === undefined) throw new RangeError(`there is no figure "${figureId}"`)
    return chosen
  }

  /**
   * A session with another figure, or another state of the same one. Everything is worked out and drawn before anything
   * is replaced; if that fails, what was on the screen is drawn again and stays.
   * @param at null: the session's own start
   */
  function stand(chosen: Figure, next: Session, at: Beat | null, brought: OwnFigure | null): void {
    const after = lessonOf(next, chosen)
    if (brought !== null) rehearse(next, chosen)
    const now = driver.now()
    const standing = lessonClock(after, beatLasts(after, next.barsPerMinute), now)
    const clockAfter = soughtTo(standing, at ?? after.range.from, now)
    const beatAfter = beatAt(clockAfter, now)
    try {
      screen.frame(next, after, beatAfter)
      screen.draw(beatAfter)
    } catch (reason) {
      framePanels()
      drawNow()
      throw reason
    }
    if (clock.playing) driver.rest()
    figure = chosen
    clock = clockAfter
    const { own } = store.getState()
    store.setState({
      session: withBeat(next, beatAfter),
      lesson: after,
      playing: false,
      along: null,
      asked: !next.names,
      own: brought === null ? own : withOwn(own, brought),
    })
    tellGrid(true)
  }

  /** What plays goes on from there as soon as it can be heard, so that its first click is not lost. */
  function moveTo(at: Beat): void {
    const when = changesAt()
    clock = soughtTo(clock, at, when)
    const { session, lesson: current, along } = store.getState()
    clock = keptToMusic(clock, current, along, when)
    store.setState({ session: withBeat(session, beatNow()) })
    drawNow()
    tellGrid(true)
  }

  function play(countIn: CountInBars = session().countIn): void {
    if (clock.playing) return
    const { lesson: current, along } = store.getState()
    clock = begun(clock, current, countIn, along, { soon: soonest(), whole: fromSilence() })
    seen = false
    store.setState({ playing: true })
    driver.run(frame)
  }

  function pause(): void {
    if (!clock.playing) return
    const at = nearestGridPoint(beatNow(), store.getState().lesson.schedule.grid)
    clock = paused(clock, driver.now())
    driver.rest()
    store.setState({ playing: false })
    moveTo(at)
  }

  return {
    store,
    figures,
    clock: () => clock,
    clockNow: () => clockThen(clock, driver.now()),
    now: () => driver.now(),
    beatNow,
    gridBeat,
    onGrid: (listener) => gridListeners.add(listener),
    choose(figureId) {
      const chosen = known(figureId)
      stand(chosen, withFigure(session(), chosen, beat(0), speedNow()), null, null)
    },
    async open(text, fileName) {
      // The parser comes when it is first wanted: the demos need none.
      const { parseFigure } = await import('./figure/parse.ts')
      const parsed = parseFigure(text, fileName)
      if (parsed.ok) {
        const brought = ownFigure(parsed.figure, text, fileName)
        stand(brought.figure, withFigure(session(), brought.figure, beat(0), speedNow()), null, brought)
      }
      return parsed
    },
    restore(next, brought) {
      stand(brought?.figure ?? known(next.figure), next, next.beat, brought ?? null)
    },
    play: (countIn) => play(countIn),
    putOff() {
      const { lesson: current, along } = store.getState()
      if (!clock.playing || along !== null || seen) return
      clock = putOff(clock, clock.anchor.beat > current.range.from ? soonest() : fromSilence())
      // Whoever moves along with the clock has its new time.
      tellGrid(true)
    },
    pause,
    toggle: () => (clock.playing ? pause() : play()),
    seek: (at) => moveTo(nearestGridPoint(at, store.getState().lesson.schedule.grid)),
    step(steps) {
      pause()
      moveTo(beat(gridBeat() + steps * store.getState().lesson.schedule.grid))
    },
    setTempo: (barsPerMinute) => changed(withTempo(session(), figure, barsPerMinute)),
    nextRound(barsPerMinute, countIn) {
      const next = withTempo(session(), figure, barsPerMinute)
      if (!clock.playing || clock.round === null) return changed(next)
      const current = store.getState().lesson
      const after = leadsToSame(next, session()) ? current : lessonOf(next, figure)
      const until = session().barsPerMinute
      clock = atNextRound(clock, after, beatLasts(after, next.barsPerMinute), countIn, soonest())
      toCome = { clock, until }
      store.setState({ session: next, lesson: after, along: null })
      if (after !== current) framePanels()
    },
    keepRound() {
      if (toCome?.clock !== clock || clock.former === undefined) return false
      const { former, anchor, secondsPerBeat } = clock
      // Of the next round's sound nothing must have begun.
      const sooner = riseBefore(Math.min(secondsPerBeat, former.secondsPerBeat)) + ASKED
      if (soonest() + (soonest() > driver.now() ? sooner : 0) >= anchor.now) return false
      clock = former
      const kept = withTempo(session(), figure, toCome.until)
      const current = store.getState().lesson
      const lesson = leadsToSame(kept, session()) ? current : lessonOf(kept, figure)
      store.setState({ session: kept, lesson })
      if (lesson !== current) framePanels()
      return true
    },
    playAlong(music) {
      if (music === null) return store.setState({ along: null })
      const begins = store.getState().along === null
      if (begins) pause()
      changed(withTempo(session(), figure, music.barsPerMinute), music.one)
      if (!begins) return
      moveTo(store.getState().lesson.range.from)
      play()
    },
    setLoop: (loop) => changed(withLoop(session(), loop)),
    setPart(from, to) {
      changed(withPart(session(), loopRange(store.getState().lesson.once.schedule, from, to).part))
      const { range } = store.getState().lesson
      if (!clock.playing && beatNow() >= range.to) moveTo(range.from)
    },
    toggleSteps() {
      const { session: now, lesson: current } = store.getState()
      changed(withSteps(now, now.steps === null ? stepsAt(current.schedule, gridBeat()) : null))
    },
    setOrder: (order) => changed(withOrder(session(), order)),
    change: (action) => changed(action(session())),
    setTiming(timing) {
      changed(withTiming(session(), figure, timing))
      // The new timing may have another grid.
      if (!clock.playing) moveTo(nearestGridPoint(beatNow(), store.getState().lesson.schedule.grid))
    },
    hideNames: () => changed(withNamesOff(session(), shuffled(session().order))),
    reveal: () => changed(revealed(session())),
    pictureNow: () => screen.picturesAt(shownAt(store.getState().lesson, beatNow())),
    redraw: () => drawNow(),
    onShown: (listener) => screen.onFramed(listener),
    show(stage, rects, dark) {
      // What React finds in the page when it takes it over is there already.
      if (!screen.stand({ stage, rects, dark })) framePanels()
      drawNow()
    },
  }
}
