/** What a key does, as the list of keys says it. */
export type KeyDeed = 'toggle' | 'step back' | 'step forward' | 'bar back' | 'bar forward' | 'start' | 'end'

const DEEDS: Readonly<Record<KeyDeed, string>> = {
  toggle: 'plays and pauses',
  'step back': 'half a beat back',
  'step forward': 'half a beat forward',
  'bar back': 'a bar back',
  'bar forward': 'a bar forward',
  start: 'to the start',
  end: 'to the end',
}

const KEYS: Readonly<Record<string, string>> = {
  ' ': 'Space',
  k: 'K',
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowDown: '↓',
  ArrowUp: '↑',
  PageDown: 'Page Down',
  PageUp: 'Page Up',
}

/** "Shift ←: a bar back". */
export const keyWords = (key: string, shift: boolean, deed: KeyDeed, onlyOnBeat: boolean): string =>
  `${shift ? 'Shift ' : ''}${KEYS[key] ?? key}: ${DEEDS[deed]}${onlyOnBeat ? ', on the beat slider' : ''}`
