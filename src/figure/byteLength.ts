/** The most that a description may have, in bytes; a figure of 500 actions with all their moments has some 40 KB. */
export const MOST_BYTES = 64 * 1024

/** Bytes of the text in UTF-8. */
export function byteLength(text: string): number {
  let bytes = 0
  for (let at = 0; at < text.length; at++) {
    const point = text.codePointAt(at) ?? 0
    bytes += point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4
    if (point >= 0x10000) at++
  }
  return bytes
}
