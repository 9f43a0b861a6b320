import { deflateRawSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { packText, unpackText } from '../../src/keep/packText.ts'

const MOST = 64 * 1024

describe('packText(text) and unpackText(packed, most)', () => {
  test('what is unpacked is what was packed, of signs that need no escape in an address', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 400 }), async (text) => {
        const packed = await packText(text)
        expect(packed).toMatch(/^[\w-]+$/)
        expect(await unpackText(packed, MOST)).toBe(text)
      }),
      { seed: 20261125, numRuns: 100 },
    )
  })
  test('a byte order mark and line ends survive', async () => {
    const text = '\uFEFFa: 1\r\nb: 2\n'
    expect(await unpackText(await packText(text), MOST)).toBe(text)
  })
  test('as much as is allowed comes out; one byte more is refused', async () => {
    expect(await unpackText(await packText('x'.repeat(MOST)), MOST)).toHaveLength(MOST)
    expect(await unpackText(await packText('x'.repeat(MOST + 1)), MOST)).toBeNull()
  })
  test('a text that grows to many times what is allowed is refused', async () => {
    const bomb = deflateRawSync(Buffer.alloc(20_000_000)).toString('base64url')
    expect(bomb.length).toBeGreaterThan(1800)
    expect(await unpackText(bomb, MOST)).toBeNull()
    const small = deflateRawSync(Buffer.alloc(1_000_000)).toString('base64url')
    expect(small.length).toBeLessThan(1800)
    expect(await unpackText(small, MOST)).toBeNull()
  })
  test.each(['', '!', 'AAAA', '____', 'q1Zy'])('"%s" is no packed text', async (packed) => {
    expect(await unpackText(packed, MOST)).toBeNull()
  })
  test('bytes that are no UTF-8 are refused', async () => {
    expect(await unpackText(deflateRawSync(Buffer.from([0xff, 0xfe])).toString('base64url'), MOST)).toBeNull()
  })
})
