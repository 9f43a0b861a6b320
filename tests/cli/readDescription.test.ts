import { chmodSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { devNull, tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { readDescription } from '../../src/cli/readDescription.ts'
import { MOST_BYTES } from '../../src/figure/byteLength.ts'

const folder = mkdtempSync(join(tmpdir(), 'overfoot-read-'))
afterAll(() => rmSync(folder, { recursive: true }))

function file(bytes: string | Uint8Array): string {
  const path = join(folder, 'a')
  writeFileSync(path, bytes)
  return path
}

test('readDescription: a text as it is, without a byte order mark', async () => {
  expect(await readDescription(file('title: ½\r\n'), 'a')).toEqual({ kind: 'text', text: 'title: ½\r\n' })
  expect(await readDescription(file('\u{feff}title: x'), 'a')).toEqual({ kind: 'text', text: 'title: x' })
})

test('readDescription: what is not UTF-8 is left to be found by the parser', async () => {
  expect(await readDescription(file(Uint8Array.of(0x61, 0xff)), 'a')).toEqual({ kind: 'text', text: 'a\u{fffd}' })
})

test('readDescription: the largest is read, a byte more is refused by its size alone', async () => {
  expect(await readDescription(file('x'.repeat(MOST_BYTES)), 'a')).toMatchObject({ kind: 'text' })
  const path = file('x')
  // A gap of a terabyte takes no room on the disk, and would never fit in memory.
  truncateSync(path, 2 ** 40)
  expect(await readDescription(path, 'named')).toEqual({
    kind: 'too large',
    problem: {
      code: 'too-large',
      severity: 'error',
      values: { bytes: 2 ** 40, limit: MOST_BYTES },
      where: { file: 'named', line: 1, column: 1 },
    },
  })
})

test('readDescription: a file without an end or a size is read to the limit', async () => {
  if (process.platform !== 'win32') {
    const read = await readDescription('/dev/zero', 'a')
    expect(read.kind === 'text' && read.text.length).toBe(MOST_BYTES + 1)
  }
  expect(await readDescription(devNull, 'a')).toEqual({ kind: 'text', text: '' })
})

test('readDescription: says why a file cannot be read', async () => {
  expect(await readDescription(join(folder, 'none'), 'a')).toEqual({ kind: 'unreadable', why: 'missing' })
  expect(await readDescription(join(file('x'), 'below'), 'a')).toEqual({ kind: 'unreadable', why: 'missing' })
  expect(await readDescription(folder, 'a')).toEqual({ kind: 'unreadable', why: 'a folder' })
  expect(await readDescription('a\0b', 'a')).toEqual({ kind: 'unreadable', why: 'failed' })
})

test('readDescription: a file one may not read', async () => {
  const path = file('x')
  chmodSync(path, 0)
  // Root may read everything, and Windows has no such mark.
  const mayAll = process.getuid === undefined || process.getuid() === 0
  const expected = mayAll ? { kind: 'text', text: 'x' } : { kind: 'unreadable', why: 'forbidden' }
  expect(await readDescription(path, 'a')).toMatchObject(expected)
  chmodSync(path, 0o600)
})
