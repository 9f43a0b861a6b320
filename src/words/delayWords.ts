const milliseconds = (time: number): number => Math.round(time * 1000)

/** What is said of the test that finds a sound's delay by tapping. */
export const delayWords = {
  title: 'Find the delay by tapping',
  /** @param beatsPerMinute at which the figure plays */
  intro: (beatsPerMinute: number) =>
    `The figure plays ${Math.round(beatsPerMinute)} beats a minute, so that no beat is taken for the next. Tap on each click you hear; do not look at the picture.`,
  start: 'Start the test',
  stop: 'End the test',
  tap: 'Tap what you hear',
  silent: 'No sound yet: taps do not count.',
  more: (taps: number) => `${taps} more ${taps === 1 ? 'tap' : 'taps'}.`,
  uneven: 'Too uneven to tell. Go on tapping with the clicks.',
  /** @param delay seconds, to 10 ms @param spread a standard deviation, seconds */
  found: (delay: number, spread: number) =>
    `By your taps the sound is ${delay === 0 ? 'not late' : `about ${milliseconds(delay)} ms late`}. Your taps: even to ${Math.max(1, milliseconds(spread))} ms.`,
  /** Beyond what can be set. @param most seconds */
  most: (most: number) => `More than ${milliseconds(most)} ms cannot be set.`,
  set: (delay: number) => `Set to ${milliseconds(delay)} ms`,
  isSet: (delay: number) => `Set to ${milliseconds(delay)} ms. Tap on to check it.`,
  early: 'Most people tap a little before what they hear: 25 ms are allowed for it (usual, not measured on you).',
} as const
