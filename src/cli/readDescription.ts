import { type FileHandle, open } from 'node:fs/promises'
import { MOST_BYTES } from '../figure/byteLength.ts'
import { fault, type Problem } from '../problem.ts'
import type { Unreadable } from '../words/callSentence.ts'

/** A file's text, or why there is none. */
export type ReadDescription =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'too large'; readonly problem: Problem }
  | { readonly kind: 'unreadable'; readonly why: Unreadable }

const REASONS: Readonly<Record<string, Unreadable>> = {
  ENOENT: 'missing',
  ENOTDIR: 'missing',
  EISDIR: 'a folder',
  EACCES: 'forbidden',
  EPERM: 'forbidden',
}

const tooLarge = (file: string, bytes: number): Problem => ({
  ...fault('too-large', { bytes, limit: MOST_BYTES }),
  severity: 'error',
  where: { file, line: 1, column: 1 },
})

/**
 * Reads a description; never more than one byte above what it may have, for a pipe does not tell its size.
 * @param path where it is
 * @param file what its problems call it
 */
export async function readDescription(path: string, file: string): Promise<ReadDescription> {
  let handle: FileHandle | null = null
  try {
    handle = await open(path, 'r')
    const { size } = await handle.stat()
    if (size > MOST_BYTES) return { kind: 'too large', problem: tooLarge(file, size) }
    const buffer = new Uint8Array(MOST_BYTES + 1)
    let length = 0
    while (length < buffer.length) {
      const { bytesRead } = await handle.read(buffer, length, buffer.length - length)
      if (bytesRead === 0) break
      length += bytesRead
    }
    // As a browser reads files: without a byte order mark, and with U+FFFD for what is not UTF-8.
    return { kind: 'text', text: new TextDecoder().decode(buffer.subarray(0, length)) }
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : ''
    return { kind: 'unreadable', why: REASONS[code] ?? 'failed' }
  } finally {
    await handle?.close()
  }
}
