const STATES = {
  off: 'Sound is off',
  sounding: 'Sound is on',
  waiting: 'No sound yet: press here once more',
  missing: 'This browser has no sound',
} as const
type State = keyof typeof STATES

/** What is said of what is heard. */
export const soundWords = {
  title: 'Sound',
  button: (state: State) => `Sound. ${STATES[state]}`,
  state: (state: State) => STATES[state],
  on: 'Sound',
  again: 'Try again',
  volume: 'Volume',
  clicks: 'Clicks',
  bar: 'The first of the bar stands out',
  beats: 'Beats',
  halves: 'Half beats',
  /** Whether half beats are clicked, as things stand. */
  halvesNow: (tempo: string, clicked: boolean) => `At ${tempo} half beats are ${clicked ? 'clicked' : 'left out'}.`,
  halvesText: { usual: 'Where the tempo leaves room', on: 'Always', off: 'Never' },
  count: 'Counted aloud',
  counts: { off: 'Not', counting: 'All of the count', steps: 'Only where a step is called' },
  later: 'Sound comes later than the picture (Bluetooth)',
  offset: (reported: number, added: number) =>
    `The device says ${Math.round(reported * 1000)} ms, you add ${Math.round(added * 1000)} ms: ${Math.round((reported + added) * 1000)} ms in all.`,
  files: (loops: number) => `For other equipment, at the tempo at hand: ${loops} loops`,
  wav: 'Save as sound (WAV)',
  midi: 'Save as MIDI',
  throughSwitch: 'Sound even when the device is switched to silent. It may pause your music app.',
  /** What to look at where nothing is heard, the likeliest first. */
  nothingHeard:
    'Nothing to hear? Look at the device’s silent switch first, then at its volume, and at where its sound goes (earphones, a speaker in another room).',
  care: 'Start quiet. Leave room for the music, your partner and the room, and rest your ears.',
} as const
