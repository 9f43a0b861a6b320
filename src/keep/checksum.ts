/** CRC-32 as in ISO/IEC 3309 (and PNG, annex D), bits reversed. */
const POLYNOMIAL = 0xedb88320
/** 32 bits in base 36. */
const DIGITS = 7

/**
 * CRC-32 of an ASCII text, as seven lower-case letters and digits. A change of one character, or of any four that stand
 * together, always changes it.
 */
export function checksum(text: string): string {
  let rest = 0xffffffff
  for (let at = 0; at < text.length; at++) {
    rest ^= text.charCodeAt(at) & 0xff
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ POLYNOMIAL : rest >>> 1
  }
  return ((rest ^ 0xffffffff) >>> 0).toString(36).padStart(DIGITS, '0')
}
