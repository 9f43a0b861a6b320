import type { FrameTimes } from './pages/frames.ts'

/** One picture that the stage rendered after an event. */
export type AnswerPicture = {
  /** Animation frames that had begun since the event. */
  readonly frames: number
  /** ms since the event's own time stamp. */
  readonly ms: number
  /** The beat that it shows. */
  readonly beat: number
}

/** What an event led to. */
export type Answer = {
  /** The beat at the event, and the one that it came to stand on. */
  readonly before: number
  readonly after: number
  readonly pictures: readonly AnswerPicture[]
}

declare global {
  /** What the bench's own scripts leave in the pages. */
  interface Window {
    measureFrames: (panels: 3 | 4) => Promise<FrameTimes>
    /** When the first picture had been rendered, ms since the navigation began. */
    firstPicture?: number
    /** Waits for the first of the events, then for three animation frames. */
    answerTo: (events: readonly string[]) => Promise<Answer>
    answer: Promise<Answer>
  }
}
