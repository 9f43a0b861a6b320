import { createStore, type StoreApi } from 'zustand/vanilla'
import { atTempo, beatAt, type Clock, isOver, paused, playing, soughtTo, standingClock, within } from './clock/clock.ts'
import type { Driver } from './clock/driver.ts'
import type { Counting } from './dance/dance.ts'
import { speedOf } from './dance/speed.ts'
import type { Figure } from './figure/figure.ts'
import { type OwnFigure, ownFigure, withOwn } from './figure/ownFigure.ts'
import type { ParseResult } from './figure/parse.ts'
import { type PagedPanels, type PictureNow, pagedPanels } from './scene/pagedPanels.ts'
import { palettes } from './scene/palette.ts'
import type { Rect } from './scene/panelPicture.ts'
import type { PanelView } from './scene/panelView.ts'
import type { Seen } from './scene/view.ts'
import { createListeners } from './session/createListeners.ts'
import { type Lesson, leadsToSame, lessonOf } from './session/lesson.ts'
import { rehearse } from './session/rehearse.ts'
import {
  newSession,
  revealed,
  type Session,
  withBeat,
  withCounting,
  withFigure,
  withLoop,
  withNamesOff,
  withOpposite,
  withOrder,
  withSeen,
  withSteps,
  withTempo,
  withTiming,
} from './session/session.ts'
import { shuffled } from './session/shuffled.ts'
import { stepsAt } from './session/stepsAt.ts'
import { beatLasts } from './sound/beatLasts.ts'
import type { Stage } from './stage/stage.ts'
import { gridPointBefore, nearestGridPoint } from './timing/grid.ts'
import { type Beat, beat } from './units.ts'

/** What the interface may know: it changes on what people do, never with the frame. */
export type PlayerState = {
  readonly session: Session
  readonly lesson: Lesson
  readonly playing: boolean
  /** "Who is late?" has been asked of the panels as they stand: they keep their numbers when the names are shown. */
  readonly asked: boolean
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
  /** The whole figure, over and over or once. */
  setLoop(loop: boolean): void
  /** The step at the beat now with the one before it, over and over; once more: the whole figure again. */
  toggleSteps(): void
  /** Everything that is set and only changes the session: one of its named actions. */
  change(action: (session: Session) => Session): void
  setCounting(counting: Counting): void
  /** Another of the figure's timings. */
  setTiming(timing: number): void
  /** Which panels are on the screen, from left to right, by index; an empty list changes nothing. */
  setOrder(order: readonly number[]): void
  setSeen(seen: Seen): void
  /** The partner's part, by the natural opposite. */
  setOpposite(opposite: boolean): void
  /** Names off and the panels shuffled: "who is late?" */
  hideNames(): void
  reveal(): void
  /** What is on the screen at the beat now, panel by panel from left to right; empty before the first picture. */
  pictureNow(): readonly PictureNow[]
  /** Told whenever the panels have been framed anew. Returns what stops it. */
  onShown(listener: () => void): () => void
  /** The same picture once more, for browsers that have thrown it away. */
  redraw(): void
  /** The stage to draw on and where on it each panel lies, in CSS px (as they stand: rects[0] is session.order[0]'s). */
  show(stage: Stage, rects: readonly Rect[], dark: boolean): void
}

type Shown = { readonly stage: Stage; readonly rects: readonly Rect[]; readonly dark: boolean }

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
    asked: false,
    own: [],
  }))
  let clock = standingClock(lesson.range, beatLasts(lesson, opening.barsPerMinute), lesson.round, driver.now())

  // 2. Where it is drawn.
  let shown: Shown | null = null
  let paged: PagedPanels | null = null
  let page = 0
  let panels: readonly PanelView[] = []
  const gridListeners = createListeners<Beat>()
  const shownListeners = createListeners<void>()
  let toldAt: Beat = lesson.range.from

  const session = (): Session => store.getState().session

  const speedNow = (): number => speedOf(store.getState().lesson.dance, session().barsPerMinute)

  function framed({ order, names }: Session, current: Lesson, at: Beat): void {
    if (shown === null || shown.rects.length === 0) return
    paged = pagedPanels(current, order, shown.rects, names)
    turnTo(paged, paged.pageAt(at))
    shownListeners.tell()
  }

  /** Builds what stands on a page. */
  function turnTo(all: PagedPanels, next: number): void {
    page = next
    panels = all.panelsOn(next)
    shown?.stage.setPanels(
      panels.map(({ picture }, place) => ({ rect: all.rects[place] as Rect, picture })),
      palettes[shown.dark ? 'dark' : 'light'].stage,
    )
  }

  const framePanels = (): void => framed(session(), store.getState().lesson, beatNow())

  // 3. One beat → one picture.
  const beatNow = (): Beat => beatAt(clock, driver.now())
  const gridBeat = (): Beat => gridPointBefore(beatNow(), store.getState().lesson.schedule.grid)
  function draw(at: Beat): void {
    if (paged !== null && paged.pageAt(at) !== page) turnTo(paged, paged.pageAt(at))
    shown?.stage.draw(panels.map((panel) => panel.frameAt(at)))
  }

  function tellGrid(always: boolean): void {
    const at = gridBeat()
    if (!always && at === toldAt) return
    toldAt = at
    gridListeners.tell(at)
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
    const sameLesson = leadsToSame(next, before.session)
    const after = sameLesson ? before.lesson : lessonOf(next, figure)
    // What sounds already goes on; nothing waits for it where nothing plays.
    const when = clock.playing ? (driver.next?.() ?? driver.now()) : driver.now()
    if (!sameLesson) clock = within(clock, after.range, after.repeats ? after.round : null, when)
    const lasts = beatLasts(after, next.barsPerMinute)
    if (lasts !== clock.secondsPerBeat) clock = atTempo(clock, lasts, when)
    const asked = !next.names || (before.asked && next.order === before.session.order)
    store.setState({ session: next, lesson: after, asked })
    if (!sameLesson || next.names !== before.session.names) framePanels()
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
      standingClock(after.range, beatLasts(after, next.barsPerMinute), after.repeats ? after.round : null, now),
      at ?? after.range.from,
      now,
    )
    const beatAfter = beatAt(clockAfter, now)
    try {
      framed(next, after, beatAfter)
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
      asked: !next.names,
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

  return {
    store,
    figures,
    clock: () => clock,
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
    toggleSteps() {
      const { session: now, lesson: current } = store.getState()
      changed(withSteps(now, now.steps === null ? stepsAt(current.schedule, gridBeat()) : null))
    },
    setOrder: (order) => changed(withOrder(session(), order)),
    setSeen: (seen) => changed(withSeen(session(), seen)),
    setOpposite: (opposite) => changed(withOpposite(session(), opposite)),
    change: (action) => changed(action(session())),
    setCounting: (counting) => changed(withCounting(session(), counting)),
    setTiming(timing) {
      changed(withTiming(session(), figure, timing))
      // The new timing may have another grid.
      if (!clock.playing) moveTo(nearestGridPoint(beatNow(), store.getState().lesson.schedule.grid))
    },
    hideNames: () => changed(withNamesOff(session(), shuffled(session().order))),
    reveal: () => changed(revealed(session())),
    pictureNow: () => paged?.picturesAt(beatNow()) ?? [],
    redraw: () => draw(beatNow()),
    onShown: (listener) => shownListeners.add(listener),
    show(stage, rects, dark) {
      // What React finds in the page when it takes it over is there already.
      const stands =
        shown?.stage === stage && shown.dark === dark && JSON.stringify(shown.rects) === JSON.stringify(rects)
      shown = { stage, rects, dark }
      if (!stands) framePanels()
      draw(beatNow())
    },
  }
}
