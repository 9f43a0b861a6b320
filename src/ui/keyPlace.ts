import type { KeyPlace } from './keys.ts'

/** Marks the beat's slider, which has keys of its own. */
export const BEAT_SLIDER = 'beat-slider'

/** Where the keyboard is, for the table of keys. */
export function keyPlace(target: EventTarget | null): KeyPlace {
  if (!(target instanceof Element)) return 'page'
  if (target.closest('dialog') !== null) return 'own'
  if (target.id === BEAT_SLIDER) return 'beat'
  if (target instanceof HTMLInputElement) return target.type === 'range' ? 'slider' : 'own'
  if (target.closest('select, textarea, [contenteditable]') !== null) return 'own'
  return target.closest('button, summary, a[href]') === null ? 'page' : 'button'
}
