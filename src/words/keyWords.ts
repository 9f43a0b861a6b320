/** What a key does, as the list of keys says it. */
export type KeyDeed =
  | 'toggle'
  | 'step back'
  | 'step forward'
  | 'bar back'
  | 'bar forward'
  | 'start'
  | 'end'
  | 'slower'
  | 'faster'
  | 'steps'
  | 'part from'
  | 'part to'
  | 'names'
  | 'first panel'
  | 'second panel'
  | 'third panel'
  | 'fourth panel'
  | 'faults'
  | 'teach'
  | 'explain'
  | 'keys'

const DEEDS: Readonly<Record<KeyDeed, string>> = {
  toggle: 'plays and pauses',
  'step back': 'half a beat back',
  'step forward': 'half a beat forward',
  'bar back': 'a bar back',
  'bar forward': 'a bar forward',
  start: 'to the start',
  end: 'to the end',
  slower: '10 % slower',
  faster: '10 % faster',
  steps: 'this step with the one before it, over and over',
  'part from': 'loop from here on',
  'part to': 'loop up to here',
  names: 'names off and on',
  'first panel': 'in time, shown or not',
  'second panel': 'the second picture (late at first), shown or not',
  'third panel': 'the third picture (early at first), shown or not',
  'fourth panel': 'the fourth picture, where there is one, shown or not',
  faults: 'what goes wrong: mistakes to choose from, in and out',
  teach: 'full screen for teaching, in and out',
  explain: 'what is what in the picture',
  keys: 'this list',
}

const KEYS: Readonly<Record<string, string>> = {
  ' ': 'Space',
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowDown: '↓',
  ArrowUp: '↑',
  PageDown: 'Page Down',
  PageUp: 'Page Up',
}

/** The key as it is written on keyboards: "Shift ←", "K". */
export const keyName = (key: string, shift: boolean): string =>
  `${shift ? 'Shift ' : ''}${KEYS[key] ?? (key.length === 1 ? key.toUpperCase() : key)}`

/** "a bar back". */
export const keyWords = (deed: KeyDeed, onlyOnBeat: boolean): string =>
  `${DEEDS[deed]}${onlyOnBeat ? ', on the beat slider' : ''}`
