/** What left a sound's graph: the frame of each block's first sample, and the blocks. */
export type Recording = { frames: number[]; blocks: Float32Array[] }

/** A beat as it was drawn, with what was heard at that moment by the device's own word, and the page's time; in seconds. */
export type Drawn = { readonly beat: number; readonly heard: number; readonly page: number }

declare global {
  interface Window {
    /** What goes to the device. */
    recorded: Recording
    /** What a click driven by a timer comes to. */
    timed: Recording
    drawn: Drawn[]
    sounding: AudioContext | undefined
  }
}
