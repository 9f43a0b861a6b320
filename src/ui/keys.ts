import type { KeyDeed } from '../words/keyWords.ts'

/** Where the keyboard is: elsewhere on the page, the beat's slider, another slider, a button, or a control that needs its keys itself. */
export type KeyPlace = 'page' | 'beat' | 'slider' | 'button' | 'own'

export type KeyRow = {
  /** As `KeyboardEvent.key` has it, letters small. */
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

const isLetter = (key: string): boolean => /^[a-z]$/.test(key)

/** "K" and, on a Cyrillic or Greek layout, whatever lies on that key, are "k". */
function plainKey({ key, code }: KeyPress): string {
  if (key.length !== 1) return key
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the whole of ASCII is meant
  if (/[^\x00-\x7f]/.test(key)) return /^Key[A-Z]$/.test(code) ? code.slice(3).toLowerCase() : key
  return key.toLowerCase()
}

/**
 * What a press does; null: nothing of ours.
 * @param letters whether single letters do anything (they can be switched off: speech input says letters by accident)
 */
export function keyDeed(press: KeyPress, place: KeyPlace, letters: boolean): KeyDeed | null {
  if (press.modified) return null
  const key = plainKey(press)
  if (isLetter(key) && !letters) return null
  const found = keys.find(
    (one) => one.key === key && (isLetter(key) || one.shift === press.shift) && one.places.includes(place),
  )
  if (found === undefined || (found.deed === 'toggle' && press.repeated)) return null
  return found.deed
}
