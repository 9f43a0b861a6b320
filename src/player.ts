import type { StoreApi } from 'zustand/vanilla'
import type { Clock } from './clock/clock.ts'
import type { Figure } from './figure/figure.ts'
import type { OwnFigure } from './figure/ownFigure.ts'
import type { ParseResult } from './figure/parse.ts'
import type { PictureNow } from './scene/pagedPanels.ts'
import type { Rect } from './scene/panelPicture.ts'
import type { Lesson } from './session/lesson.ts'
import type { Session } from './session/session.ts'
import type { Stage } from './stage/stage.ts'
import type { CountInBars } from './timing/countIn.ts'
import type { Beat, Seconds } from './units.ts'

/** What the interface may know: it changes on what people do, never with the frame. */
export type PlayerState = {
  readonly session: Session
  readonly lesson: Lesson
  readonly playing: boolean
  /** When a bar of the music begins that it keeps to, in the driver's time; null: it keeps to none. */
  readonly along: Seconds | null
  /** "Who is late?" has been asked of the panels as they stand: they keep their numbers when the names are shown. */
  readonly asked: boolean
  /** What the user has opened, in the order of opening. */
  readonly own: readonly OwnFigure[]
}

export type Player = {
  readonly store: StoreApi<PlayerState>
  /** The demos; what the user has opened is in the store. */
  readonly figures: readonly Figure[]
  /** The clock as it stands; it may hold from a time on that is still to come. */
  clock(): Clock
  /** The clock that holds now: for whoever moves something of his own along (the strip's playhead). */
  clockNow(): Clock
  /** The driver's time, seconds: what the clock is asked at. It may lag behind the page's where something is heard. */
  now(): Seconds
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
  /** From its start after counting in. @param countIn bars; left out: as the session has it */
  play(countIn?: CountInBars): void
  /**
   * What has just been asked to play begins a little later: for whoever needs longer to let it be heard from its beginning.
   * Nothing happens where something of it has been shown, or where it keeps to music.
   */
  putOff(): void
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
  /**
   * From the next round on at another tempo, after so many bars of counting in; at once where no round is danced.
   * @param countIn 0: it goes on
   */
  nextRound(barsPerMinute: number, countIn: CountInBars): void
  /**
   * Takes back what was asked for at the next round: this one goes on into another like it.
   * @returns whether there was something to take back, and time to
   */
  keepRound(): boolean
  /** From beat to beat of the figure danced once, in either order, over and over: on the grid, led in by the step before. */
  setPart(from: number, to: number): void
  /**
   * Keeps to music: begins from its start on the music's next bar after counting in; where it keeps to music already, it is
   * put right. It ends with another tempo or figure; after a pause it begins on the music's next bar again.
   * @param music null: it goes on by itself. `one`: when a bar begins, in the driver's time
   */
  playAlong(music: { readonly one: Seconds; readonly barsPerMinute: number } | null): void
  /** Everything that is set and only changes the session: one of its named actions. */
  change(action: (session: Session) => Session): void
  /** Another of the figure's timings. */
  setTiming(timing: number): void
  /** Which panels are on the screen, from left to right, by index; an empty list changes nothing. */
  setOrder(order: readonly number[]): void
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
