/** Line breaks, control and format characters: they could move a cursor or turn the direction of a line. */
const UNSAFE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu

/** A user's text, fit to stand on one line of a terminal: what would not show is written as `\u{…}`. */
export const plainText = (text: string): string =>
  text.replace(UNSAFE, (sign) => `\\u{${(sign.codePointAt(0) ?? 0).toString(16)}}`)
