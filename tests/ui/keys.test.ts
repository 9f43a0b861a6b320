import { describe, expect, test } from 'vitest'
import { type KeyPlace, type KeyPress, keyDeed, keys } from '../../src/ui/keys.ts'
import { keyWords } from '../../src/words/keyWords.ts'

const press = (key: string, more: Partial<KeyPress> = {}): KeyPress => ({
  key,
  code: '',
  shift: false,
  modified: false,
  repeated: false,
  ...more,
})

const places: readonly KeyPlace[] = ['page', 'beat', 'slider', 'button', 'own']

/** What the key does in each place: page, beat slider, another slider, button, a control with keys of its own. */
const matrix: readonly (readonly [name: string, pressed: KeyPress, deeds: readonly (string | null)[]])[] = [
  ['Space', press(' '), ['toggle', 'toggle', 'toggle', null, null]],
  ['K', press('k', { code: 'KeyK' }), ['toggle', 'toggle', 'toggle', 'toggle', null]],
  ['→', press('ArrowRight'), ['step forward', 'step forward', null, 'step forward', null]],
  ['←', press('ArrowLeft'), ['step back', 'step back', null, 'step back', null]],
  ['Shift →', press('ArrowRight', { shift: true }), ['bar forward', 'bar forward', null, 'bar forward', null]],
  ['Shift ←', press('ArrowLeft', { shift: true }), ['bar back', 'bar back', null, 'bar back', null]],
  ['↑', press('ArrowUp'), [null, 'step forward', null, null, null]],
  ['↓', press('ArrowDown'), [null, 'step back', null, null, null]],
  ['Page Up', press('PageUp'), [null, 'bar forward', null, null, null]],
  ['Page Down', press('PageDown'), [null, 'bar back', null, null, null]],
  ['Home', press('Home'), [null, 'start', null, null, null]],
  ['End', press('End'), [null, 'end', null, null, null]],
  ['a key without a meaning', press('x', { code: 'KeyX' }), [null, null, null, null, null]],
]

describe('keyDeed(press, place, letters)', () => {
  test.each(matrix)('%s does one thing in each place, or nothing', (_name, pressed, deeds) => {
    expect(places.map((place) => keyDeed(pressed, place, true))).toEqual(deeds)
  })

  test('the matrix above tries every row of the table', () => {
    const tried = matrix.map(([, { key, shift }]) => `${key} ${shift}`)
    expect(keys.filter(({ key, shift }) => !tried.includes(`${key} ${shift}`))).toEqual([])
  })

  test('leaves every press with Ctrl, Alt or Meta to the browser', () => {
    for (const { key } of keys) expect(keyDeed(press(key, { modified: true }), 'beat', true)).toBeNull()
  })

  test.each([
    ['QWERTY', 'k', 'KeyK'],
    ['QWERTY with Caps Lock', 'K', 'KeyK'],
    ['Dvorak: the letter counts, not the key', 'k', 'KeyV'],
    ['Russian', 'л', 'KeyK'],
    ['Greek', 'κ', 'KeyK'],
    ['Arabic', 'ن', 'KeyK'],
  ])('finds K on a keyboard in %s', (_layout, key, code) => {
    expect(keyDeed(press(key, { code }), 'page', true)).toBe('toggle')
  })

  test('takes no other letter for K because it lies where K does elsewhere', () => {
    expect(keyDeed(press('t', { code: 'KeyK' }), 'page', true)).toBeNull()
    expect(keyDeed(press('л', { code: 'KeyG' }), 'page', true)).toBeNull()
  })

  test('letters can be switched off, and nothing else with them', () => {
    expect(keyDeed(press('k', { code: 'KeyK' }), 'page', false)).toBeNull()
    expect(keyDeed(press(' '), 'page', false)).toBe('toggle')
    expect(keyDeed(press('ArrowRight'), 'page', false)).toBe('step forward')
  })

  test('a key held down steps on but does not flicker between play and pause', () => {
    expect(keyDeed(press(' ', { repeated: true }), 'page', true)).toBeNull()
    expect(keyDeed(press('ArrowRight', { repeated: true }), 'page', true)).toBe('step forward')
  })
})

describe('keyWords(key, shift, deed, onlyOnBeat)', () => {
  test('says each row of the table differently', () => {
    const said = keys.map(({ key, shift, deed, places: where }) => keyWords(key, shift, deed, where.length === 1))
    expect(new Set(said).size).toBe(keys.length)
    expect(said).toContain('Space: plays and pauses')
    expect(said).toContain('Shift ←: a bar back')
    expect(said).toContain('Page Up: a bar forward, on the beat slider')
  })
})
