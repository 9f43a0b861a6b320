const STATES = {
  off: 'Sound is off',
  sounding: 'Sound is on',
  waiting: 'No sound yet: press here once more',
  missing: 'This browser has no sound',
} as const
type State = keyof typeof STATES

/** Words of a round that are shown. */
const SAID = 12

type InFile = {
  readonly loops: number
  readonly tempo: string
  readonly seconds: number
  readonly bar: boolean
  readonly beats: boolean
  readonly halves: boolean
  readonly count: 'off' | 'counting' | 'steps'
}

/** "2 min 12 s". */
function minutes(seconds: number): string {
  const whole = Math.round(seconds)
  return whole < 60 ? `${whole} s` : `${Math.floor(whole / 60)} min ${whole % 60} s`
}

/** What is said of what is heard. */
export const soundWords = {
  title: 'Sound',
  more: 'Sound: volume, clicks, count',
  button: (state: State) => `Sound. ${STATES[state]}`,
  state: (state: State) => STATES[state],
  /** Nothing is chosen that could be heard. */
  onForNothing: 'Sound is on, but nothing is chosen that can be heard',
  on: 'Sound',
  switch: (on: boolean) => (on ? 'Switch sound off' : 'Switch sound on'),
  again: 'Try again',
  volume: 'Volume',
  clicks: 'Clicks',
  bar: 'First of the bar, higher and louder',
  beats: 'Beats',
  halves: 'Half beats',
  /** Whether half beats are clicked, as things stand. @param on whether anything is heard at all */
  halvesNow: (tempo: string, clicked: boolean, on: boolean) =>
    `At ${tempo} half beats ${on ? 'are' : 'would be'} ${clicked ? 'clicked' : 'left out'}.`,
  halvesText: { usual: 'Where the tempo leaves room', on: 'Always', off: 'Never' },
  count: 'Counted aloud',
  counts: { off: 'No words', counting: 'All of the count', steps: 'Only the steps’ own counts' },
  noVoice: 'The words are not here: the page could not fetch them, or has not yet.',
  /** 'In one round: "slow, quick, quick, …"'. @param words earliest first */
  said: (words: readonly string[]) =>
    words.length === 0
      ? 'In one round nothing is said.'
      : `In one round: “${words.slice(0, SAID).join(', ')}${words.length > SAID ? ', …' : ''}”.`,
  later: 'Sound comes later than the picture (Bluetooth)',
  offset: (reported: number, added: number) =>
    `The device says ${Math.round(reported * 1000)} ms, you add ${Math.round(added * 1000)} ms: ${Math.round((reported + added) * 1000)} ms in all.`,
  files: 'Save the click as a file',
  /** What is in a file: as it is heard now. */
  inFile: ({ loops, tempo, seconds, bar, beats, halves, count }: InFile) => {
    const clicks = [bar && !beats ? 'firsts of the bar' : '', beats ? 'beats' : '', halves ? 'half beats' : '']
    const said = count === 'off' ? '' : ' and the count (MIDI: clicks alone)'
    const heard = clicks.filter((one) => one !== '').join(', ')
    return `${loops} loops at ${tempo}, ${minutes(seconds)}: ${heard === '' ? 'no clicks' : heard}${said}, with the bars of waiting.`
  },
  wav: 'Sound (WAV)',
  midi: 'MIDI',
  saved: (name: string) => `Saved: ${name}`,
  throughSwitch: 'Sound even when the device is switched to silent. It may pause your music app.',
  /** What to look at where nothing is heard, the likeliest first. */
  nothingHeard:
    'Nothing to hear? Look at the device’s silent switch first, then at its volume, and at where its sound goes (earphones, a speaker in another room).',
  care: 'Start quiet. Leave room for the music, your partner and the room, and rest your ears.',
} as const
