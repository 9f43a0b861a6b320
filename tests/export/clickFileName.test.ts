import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { clickFileName } from '../../src/export/clickFileName.ts'

describe('clickFileName(title, barsPerMinute, ending)', () => {
  test.each([
    ['Natural turn', 29, 'wav', 'natural-turn-29-bars-a-minute.wav'],
    ['Natural turn, first half', 29, 'mid', 'natural-turn-first-half-29-bars-a-minute.mid'],
    ['Cha-Cha-Cha: 2 3 4&1', 31.5, 'wav', 'cha-cha-cha-2-3-4-1-31-5-bars-a-minute.wav'],
    ['Drehung rückwärts', 17.4, 'mid', 'drehung-rückwärts-17-4-bars-a-minute.mid'],
    ['Paso', 12.2 * 1.1, 'wav', 'paso-13-42-bars-a-minute.wav'],
    ['ワルツ', 29, 'wav', 'ワルツ-29-bars-a-minute.wav'],
    ['', 29, 'wav', 'click-29-bars-a-minute.wav'],
    ['../.. \u0000<>:"|?*', 29, 'wav', 'click-29-bars-a-minute.wav'],
    ['CON', 29, 'mid', 'con-29-bars-a-minute.mid'],
  ] as const)('%j at %d as %s is %s', (title, bars, ending, name) => {
    expect(clickFileName(title, bars, ending)).toBe(name)
  })

  test('an accent written apart gives the same name as one written together', () => {
    expect(clickFileName('Chasse\u0301', 50, 'wav')).toBe(clickFileName('Chassé', 50, 'wav'))
  })

  test('whatever the title: letters, digits, single hyphens between them, the ending, at most 60 characters', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc
            .array(fc.integer({ min: 0, max: 0x10ffff }), { maxLength: 70 })
            .map((points) => String.fromCodePoint(...points)),
          fc
            .array(fc.integer({ min: 0, max: 0x3000 }), { maxLength: 70 })
            .map((points) => String.fromCodePoint(...points)),
          fc.string({ unit: fc.constantFrom('a', ' ', '-', '/', '𝒳', '\ud835', 'İ', '\u0301'), maxLength: 130 }),
        ),
        fc.double({ min: 1, max: 400, noNaN: true }),
        fc.constantFrom('wav', 'mid'),
        (title, bars, ending) => {
          const name = clickFileName(title, bars, ending)
          expect(name.length).toBeLessThanOrEqual(60)
          expect(name).toMatch(/^[\p{L}\p{N}][\p{L}\p{N}\p{M}]*(-[\p{L}\p{N}][\p{L}\p{N}\p{M}]*)+\.(wav|mid)$/u)
          expect(name.endsWith(`-bars-a-minute.${ending}`)).toBe(true)
          // What most file systems allow.
          expect(Buffer.byteLength(name)).toBeLessThanOrEqual(255)
        },
      ),
      { seed: 20261125, numRuns: 200 },
    )
  })

  test('a long title is cut, and its tempo and ending stay', () => {
    const name = clickFileName('natural '.repeat(20), 29, 'wav')
    expect(name).toMatch(/^(natural-)+.*-29-bars-a-minute\.wav$/)
    expect(name.length).toBeGreaterThan(50)
    // Cut just behind a hyphen.
    expect(clickFileName(`${'a'.repeat(38)} bc`, 29, 'wav')).toBe(`${'a'.repeat(38)}-29-bars-a-minute.wav`)
  })
})
