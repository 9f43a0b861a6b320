import { describe, expect, test } from 'vitest'
import { type KeyPlace, type KeyPress, keyDeed, keys } from '../../src/ui/keys.ts'
import { keyName, keyWords } from '../../src/words/keyWords.ts'

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
  ['J', press('j', { code: 'KeyJ' }), ['step back', 'step back', 'step back', 'step back', null]],
  ['L', press('l', { code: 'KeyL' }), ['step forward', 'step forward', 'step forward', 'step forward', null]],
  ['<', press('<', { code: 'Comma', shift: true }), ['slower', 'slower', 'slower', 'slower', null]],
  ['>', press('>', { code: 'Period', shift: true }), ['faster', 'faster', 'faster', 'faster', null]],
  ['R', press('r', { code: 'KeyR' }), ['steps', 'steps', 'steps', 'steps', null]],
  ['[', press('[', { code: 'BracketLeft' }), ['part from', 'part from', 'part from', 'part from', null]],
  [']', press(']', { code: 'BracketRight' }), ['part to', 'part to', 'part to', 'part to', null]],
  ['N', press('n', { code: 'KeyN' }), ['names', 'names', 'names', 'names', null]],
  ['1', press('1', { code: 'Digit1' }), ['first panel', 'first panel', 'first panel', 'first panel', null]],
  ['2', press('2', { code: 'Digit2' }), ['second panel', 'second panel', 'second panel', 'second panel', null]],
  ['3', press('3', { code: 'Digit3' }), ['third panel', 'third panel', 'third panel', 'third panel', null]],
  ['4', press('4', { code: 'Digit4' }), ['fourth panel', 'fourth panel', 'fourth panel', 'fourth panel', null]],
  ['M', press('m', { code: 'KeyM' }), ['faults', 'faults', 'faults', 'faults', null]],
  ['T', press('t', { code: 'KeyT' }), ['teach', 'teach', 'teach', 'teach', null]],
  ['H', press('h', { code: 'KeyH' }), ['keys', 'keys', 'keys', 'keys', null]],
  ['?', press('?', { code: 'Slash', shift: true }), ['explain', 'explain', 'explain', 'explain', null]],
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
    const tried = matrix.map(([, { key, shift }]) => `${key} ${key.length === 1 ? '' : shift}`)
    const said = ({ key, shift }: (typeof keys)[number]) => `${key} ${key.length === 1 ? '' : shift}`
    expect(keys.filter((row) => !tried.includes(said(row)))).toEqual([])
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
    expect(keyDeed(press('y', { code: 'KeyK' }), 'page', true)).toBeNull()
    expect(keyDeed(press('л', { code: 'KeyG' }), 'page', true)).toBeNull()
  })

  test('signs are found whether Shift goes with them or not (< has a key of its own on many keyboards)', () => {
    expect(keyDeed(press('<', { code: 'IntlBackslash' }), 'page', true)).toBe('slower')
    expect(keyDeed(press('1', { code: 'Digit1', shift: true }), 'page', true)).toBe('first panel')
  })

  test('letters, figures and signs can be switched off, and nothing else with them', () => {
    for (const sign of ['1', '?', '<']) expect(keyDeed(press(sign), 'page', false)).toBeNull()
    expect(keyDeed(press('k', { code: 'KeyK' }), 'page', false)).toBeNull()
    expect(keyDeed(press(' '), 'page', false)).toBe('toggle')
    expect(keyDeed(press('ArrowRight'), 'page', false)).toBe('step forward')
  })

  test('a key held down steps on but does not flicker between play and pause', () => {
    for (const key of [' ', 't', 'h', 'n', 'r', '1']) {
      expect(keyDeed(press(key, { repeated: true }), 'page', true)).toBeNull()
    }
    expect(keyDeed(press('<', { repeated: true }), 'page', true)).toBe('slower')
    expect(keyDeed(press('ArrowRight', { repeated: true }), 'page', true)).toBe('step forward')
  })
})

describe('keyName(key, shift) and keyWords(deed, onlyOnBeat)', () => {
  test('name each row of the table differently', () => {
    expect(new Set(keys.map(({ key, shift }) => keyName(key, shift))).size).toBe(keys.length)
    expect(new Set(keys.map(({ deed }) => keyWords(deed, false))).size).toBe(new Set(keys.map(({ deed }) => deed)).size)
  })
  test('as keyboards have it', () => {
    expect(keyName(' ', false)).toBe('Space')
    expect(keyName('ArrowLeft', true)).toBe('Shift ←')
    expect(keyName('k', false)).toBe('K')
    expect(keyWords('bar forward', true)).toBe('a bar forward, on the beat slider')
  })
})
