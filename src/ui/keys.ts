import type { KeyDeed } from '../words/keyWords.ts'

/** Where the keyboard is: elsewhere on the page, the beat's slider, another slider, a button, or a control that needs its keys itself. */
export type KeyPlace = 'page' | 'beat' | 'slider' | 'button' | 'own'

export type KeyRow = {
  /** As `KeyboardEvent.key` has it, letters small. Of characters it does not matter whether Shift goes with them. */
  readonly key: string
  readonly shift: boolean
  readonly places: readonly KeyPlace[]
  readonly deed: KeyDeed
}

const EVERYWHERE: readonly KeyPlace[] = ['page', 'beat', 'slider', 'button']
const STEPPING: readonly KeyPlace[] = ['page', 'beat', 'button']
const ON_BEAT: readonly KeyPlace[] = ['beat']

const row = (key: string, places: readonly KeyPlace[], deed: KeyDeed, shift = false): KeyRow => ({
  key,
  places,
  deed,
  shift,
})

/**
 * The one table of keys: it drives the page, its list of keys and the tests. Space on a button presses that button, and
 * lists and fields keep all their keys; Page, Home and End scroll the page unless the beat's slider has the focus.
 */
export const keys: readonly KeyRow[] = [
  row(' ', ['page', 'beat', 'slider'], 'toggle'),
  row('k', EVERYWHERE, 'toggle'),
  row('j', EVERYWHERE, 'step back'),
  row('l', EVERYWHERE, 'step forward'),
  row('ArrowLeft', STEPPING, 'step back'),
  row('ArrowRight', STEPPING, 'step forward'),
  row('ArrowLeft', STEPPING, 'bar back', true),
  row('ArrowRight', STEPPING, 'bar forward', true),
  row('ArrowDown', ON_BEAT, 'step back'),
  row('ArrowUp', ON_BEAT, 'step forward'),
  row('PageDown', ON_BEAT, 'bar back'),
  row('PageUp', ON_BEAT, 'bar forward'),
  row('Home', ON_BEAT, 'start'),
  row('End', ON_BEAT, 'end'),
  row('<', EVERYWHERE, 'slower'),
  row('>', EVERYWHERE, 'faster'),
  row('r', EVERYWHERE, 'steps'),
  row('[', EVERYWHERE, 'part from'),
  row(']', EVERYWHERE, 'part to'),
  row('n', EVERYWHERE, 'names'),
  row('1', EVERYWHERE, 'first panel'),
  row('2', EVERYWHERE, 'second panel'),
  row('3', EVERYWHERE, 'third panel'),
  row('4', EVERYWHERE, 'fourth panel'),
  row('m', EVERYWHERE, 'faults'),
  row('t', EVERYWHERE, 'teach'),
  row('?', EVERYWHERE, 'explain'),
  row('h', EVERYWHERE, 'keys'),
]

export type KeyPress = {
  readonly key: string
  /** The physical key: asked only where the layout gives no Latin letter. */
  readonly code: string
  readonly shift: boolean
  /** Ctrl, Alt or Meta. */
  readonly modified: boolean
  /** Held down, so that the system repeats it. */
  readonly repeated: boolean
}

/** A letter, a figure or a sign: what speech input may type by accident (WCAG 2.2, 2.1.4), and keyboards reach with or without Shift. */
const isCharacter = (key: string): boolean => key.length === 1 && key !== ' '

/** What goes on while a key is held down; anything else would flicker. */
const REPEATING: ReadonlySet<KeyDeed> = new Set([
  'step back',
  'step forward',
  'bar back',
  'bar forward',
  'slower',
  'faster',
])

/** "K" and, on a Cyrillic or Greek layout, whatever lies on that key, are "k". */
function plainKey({ key, code }: KeyPress): string {
  if (key.length !== 1) return key
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the whole of ASCII is meant
  if (/[^\x00-\x7f]/.test(key)) return /^Key[A-Z]$/.test(code) ? code.slice(3).toLowerCase() : key
  return key.toLowerCase()
}

/**
 * What a press does; null: nothing of ours.
 * @param characters whether single letters, figures and signs do anything (they can be switched off)
 */
export function keyDeed(press: KeyPress, place: KeyPlace, characters: boolean): KeyDeed | null {
  if (press.modified) return null
  const key = plainKey(press)
  if (isCharacter(key) && !characters) return null
  const found = keys.find(
    (one) => one.key === key && (isCharacter(key) || one.shift === press.shift) && one.places.includes(place),
  )
  if (found === undefined || (press.repeated && !REPEATING.has(found.deed))) return null
  return found.deed
}
