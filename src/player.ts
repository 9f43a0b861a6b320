import { createStore, type StoreApi } from 'zustand/vanilla'
import { atTempo, beatAt, type Clock, isOver, paused, playing, soughtTo, standingClock, within } from './clock/clock.ts'
import type { Driver } from './clock/driver.ts'
import type { Counting } from './dance/dance.ts'
import { secondsPerBeat } from './dance/secondsPerBeat.ts'
import type { Figure } from './figure/figure.ts'
import { type OwnFigure, ownFigure } from './figure/ownFigure.ts'
import type { ParseResult } from './figure/parse.ts'
import { palettes } from './scene/palette.ts'
import type { Rect } from './scene/panelPicture.ts'
import type { PanelView } from './scene/panelView.ts'
import { panelView } from './scene/panelView.ts'
import { viewOf } from './scene/view.ts'
import { type Lesson, lessonOf } from './session/lesson.ts'
import { rehearse } from './session/rehearse.ts'
import {
  newSession,
  revealed,
  type Session,
  withBeat,
  withCounting,
  withEarly,
  withFigure,
  withLate,
  withLoop,
  withNamesOff,
  withTempo,
  withTiming,
} from './session/session.ts'
import type { Stage } from './stage/stage.ts'
import { gridPointBefore, nearestGridPoint } from './timing/grid.ts'
import { type Beat, beat } from './units.ts'

/** What the interface may know: it changes on what people do, never with the frame. */
export type PlayerState = {
  readonly session: Session
  readonly lesson: Lesson
  readonly playing: boolean
  /** What the user has opened, in the order of opening. */
  readonly own: readonly OwnFigure[]
}

export type Player = {
  readonly store: StoreApi<PlayerState>
  /** The demos; what the user has opened is in the store. */
  readonly figures: readonly Figure[]
  /** The clock as it stands: for whoever moves something of his own along (the strip's playhead). */
  clock(): Clock
  /** The driver's time, seconds: what the clock is asked at. */
  beatNow(): Beat
  /** The grid point at or before the beat now. */
  gridBeat(): Beat
  /** Told at every grid point passed while playing and after every seek; not more often. Returns what stops it. */
  onGrid(listener: (at: Beat) => void): () => void
  /** @throws RangeError when there is no such figure */
  choose(figureId: string): void
  /**
   * Reads a description, puts its figure into the menu (the same file again replaces the former) and shows it. With
   * problems nothing changes.
   * @throws (rejects) when the figure cannot be drawn; nothing has changed
   */
  open(text: string, fileName: string): Promise<ParseResult>
  /**
   * Shows a session as it is given, at once.
   * @param brought the session's figure, when it is not in the menu yet
   * @throws when it cannot be drawn, or its figure is not known; nothing has changed
   */
  restore(session: Session, brought?: OwnFigure): void
  play(): void
  /** Stops on the nearest grid point, so that picture, count and words speak of one moment. */
  pause(): void
  toggle(): void
  /** To the nearest grid point; goes on playing if it plays. */
  seek(at: number): void
  /** By grid steps (half beats) from the grid point shown; pauses first. */
  step(steps: number): void
  setTempo(barsPerMinute: number): void
  setLoop(loop: boolean): void
  setLate(by: number): void
  setEarly(part: number): void
  setCounting(counting: Counting): void
  /** Another of the figure's timings. */
  setTiming(timing: number): void
  /** Names off and the panels shuffled: "who is late?" */
  hideNames(): void
  reveal(): void
  /** The stage to draw on and where on it each panel lies, in CSS px (as they stand: rects[0] is session.order[0]'s). */
  show(stage: Stage, rects: readonly Rect[], dark: boolean): void
}

/** Where and on what the panels are drawn. */
type Shown = { readonly stage: Stage; readonly rects: readonly Rect[]; readonly dark: boolean }

/** A random order of 0 … n − 1 (Fisher and Yates). */
function shuffled(n: number): number[] {
  const order = Array.from({ length: n }, (_, index) => index)
  for (let last = n - 1; last > 0; last--) {
    const other = Math.floor(Math.random() * (last + 1))
    ;[order[last], order[other]] = [order[other] as number, order[last] as number]
  }
  return order
}

/** The same file again takes the former's place. */
function withOwn(own: readonly OwnFigure[], brought: OwnFigure): OwnFigure[] {
  const former = own.findIndex(({ figure }) => figure.id === brought.figure.id)
  return former < 0 ? [...own, brought] : own.with(former, brought)
}

/**
 * The whole pipeline on one page:
 * session + figure → lesson (schedule, performances, range) → views and panels (floor, framing) → at a beat: frames → stage.
 * Playing, scrubbing and looping only choose the beat.
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
    own: [],
  }))
  let clock = standingClock(
    lesson.range,
    secondsPerBeat(lesson.dance, opening.barsPerMinute),
    lesson.round,
    driver.now(),
  )

  // 2. Where it is drawn.
  let shown: Shown | null = null
  let panels: readonly PanelView[] = []
  const listeners = new Set<(at: Beat) => void>()
  let toldAt: Beat = lesson.range.from

  function framed(session: Session, current: Lesson): void {
    if (shown === null || shown.rects.length === 0) return
    const { stage, rects, dark } = shown
    const standing = session.order.slice(0, rects.length)
    const area = ({ width, height }: Rect): number => width * height
    const largest = rects.reduce((found, rect) => (area(rect) > area(found) ? rect : found), rects[0] as Rect)
    const like = viewOf(current, largest.width, largest.height)
    const pictured = standing.map((index, place) => {
      const rect = rects[place] as Rect
      const view = viewOf(current, rect.width, rect.height, like)
      return { rect, view: panelView(current, index, view, session.names) }
    })
    stage.setPanels(
      pictured.map(({ rect, view }) => ({ rect, picture: view.picture })),
      palettes[dark ? 'dark' : 'light'].stage,
    )
    panels = pictured.map(({ view }) => view)
  }

  function framePanels(): void {
    const { session, lesson: current } = store.getState()
    framed(session, current)
  }

  // 3. One beat → one picture.
  const beatNow = (): Beat => beatAt(clock, driver.now())
  const gridBeat = (): Beat => gridPointBefore(beatNow(), store.getState().lesson.schedule.grid)
  const draw = (at: Beat): void => shown?.stage.draw(panels.map((panel) => panel.frameAt(at)))

  function tellGrid(always: boolean): void {
    const at = gridBeat()
    if (!always && at === toldAt) return
    toldAt = at
    for (const listener of listeners) listener(at)
  }

  function frame(): void {
    if (isOver(clock, driver.now())) {
      pause()
      return
    }
    draw(beatNow())
    tellGrid(false)
  }

  // 4. What people do.
  /** The same figure, otherwise shown. */
  function changed(next: Session): void {
    const before = store.getState()
    const sameLesson =
      next.timing === before.session.timing &&
      next.panels === before.session.panels &&
      next.loop === before.session.loop
    const after = sameLesson ? before.lesson : lessonOf(next, figure)
    if (!sameLesson) clock = within(clock, after.range, next.loop ? after.round : null, driver.now())
    if (next.barsPerMinute !== before.session.barsPerMinute) {
      clock = atTempo(clock, secondsPerBeat(after.dance, next.barsPerMinute), driver.now())
    }
    store.setState({ session: next, lesson: after })
    if (!sameLesson || next.names !== before.session.names || next.order !== before.session.order) framePanels()
    draw(beatNow())
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
    const clockAfter = soughtTo(
      standingClock(after.range, secondsPerBeat(after.dance, next.barsPerMinute), next.loop ? after.round : null, now),
      at ?? after.range.from,
      now,
    )
    const beatAfter = beatAt(clockAfter, now)
    try {
      framed(next, after)
      draw(beatAfter)
    } catch (reason) {
      framePanels()
      draw(beatNow())
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
      own: brought === null ? own : withOwn(own, brought),
    })
    tellGrid(true)
  }

  function moveTo(at: Beat): void {
    clock = soughtTo(clock, at, driver.now())
    const { session } = store.getState()
    store.setState({ session: withBeat(session, beatNow()) })
    draw(beatNow())
    tellGrid(true)
  }

  function play(): void {
    if (clock.playing) return
    clock = playing(clock, driver.now())
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

  const session = (): Session => store.getState().session

  return {
    store,
    figures,
    clock: () => clock,
    beatNow,
    gridBeat,
    onGrid(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    choose(figureId) {
      const chosen = known(figureId)
      stand(chosen, withFigure(session(), chosen, beat(0)), null, null)
    },
    async open(text, fileName) {
      // The parser comes when it is first wanted: the demos need none.
      const { parseFigure } = await import('./figure/parse.ts')
      const parsed = parseFigure(text, fileName)
      if (parsed.ok) {
        const brought = ownFigure(parsed.figure, text, fileName)
        stand(brought.figure, withFigure(session(), brought.figure, beat(0)), null, brought)
      }
      return parsed
    },
    restore(next, brought) {
      stand(brought?.figure ?? known(next.figure), next, next.beat, brought ?? null)
    },
    play,
    pause,
    toggle: () => (clock.playing ? pause() : play()),
    seek: (at) => moveTo(nearestGridPoint(at, store.getState().lesson.schedule.grid)),
    step(steps) {
      pause()
      moveTo(beat(gridBeat() + steps * store.getState().lesson.schedule.grid))
    },
    setTempo: (barsPerMinute) => changed(withTempo(session(), figure, barsPerMinute)),
    setLoop: (loop) => changed(withLoop(session(), loop)),
    setLate: (by) => changed(withLate(session(), by)),
    setEarly: (part) => changed(withEarly(session(), part)),
    setCounting: (counting) => changed(withCounting(session(), counting)),
    setTiming(timing) {
      changed(withTiming(session(), figure, timing))
      // The new timing may have another grid.
      if (!clock.playing) moveTo(nearestGridPoint(beatNow(), store.getState().lesson.schedule.grid))
    },
    hideNames: () => changed(withNamesOff(session(), shuffled(session().panels.length))),
    reveal: () => changed(revealed(session())),
    show(stage, rects, dark) {
      shown = { stage, rects, dark }
      framePanels()
      draw(beatNow())
    },
  }
}
