/** Bytes as they are printed in a specification: "4D 54". */
export const hex = (bytes: ArrayLike<number>): string =>
  Array.from(bytes, (byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join(' ')

/** And back. */
export const fromHex = (text: string): number[] => text.split(' ').map((byte) => Number.parseInt(byte, 16))
