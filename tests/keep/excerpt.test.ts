import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { excerpt } from '../../src/keep/excerpt.ts'

describe('excerpt(text, line, column)', () => {
  test('the sign at the place, and what stands around it', () => {
    expect(excerpt('a: 1\r\ntiming: S X Q\r\n', 2, 11)).toEqual({ before: 'timing: S ', at: 'X', after: ' Q' })
  })
  test('a byte order mark is no column', () => {
    expect(excerpt('\uFEFFabc', 1, 1).at).toBe('a')
  })
  test('behind the end of a line, or of the text, there is nothing', () => {
    expect(excerpt('abc\nd', 1, 4)).toEqual({ before: 'abc', at: '', after: '' })
    expect(excerpt('abc', 9, 1)).toEqual({ before: '', at: '', after: '' })
  })
  test('a sign of two units stays whole', () => {
    expect(excerpt('a💃b', 1, 2)).toEqual({ before: 'a', at: '💃', after: 'b' })
  })
  test('signs that turn or hide text are written out, a tab is seen', () => {
    expect(excerpt('\ta\u202Eb\u0000', 1, 2)).toEqual({ before: '⇥', at: 'a', after: '\\u{202e}b\\u{0}' })
  })
  test('of a long line only what is near is shown', () => {
    const { before, at, after } = excerpt(`${'x'.repeat(5000)}!${'y'.repeat(5000)}`, 1, 5001)
    expect([before.length, at, after.length]).toEqual([41, '!', 61])
  })
  test('never anything that cannot stand on a line', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.nat(3), fc.nat(30), (text, line, column) => {
        for (const part of Object.values(excerpt(text, line + 1, column + 1))) {
          expect(part).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u)
        }
      }),
      { seed: 20261125 },
    )
  })
})
