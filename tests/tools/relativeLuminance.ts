/** A colour's red, green and blue as light, each 0 … 1 (relative luminance's own R, G and B, WCAG 2.2). */
export type Light = readonly [red: number, green: number, blue: number]

/** @throws Error unless the text is # and six hexadecimal digits in capitals, as the palette writes them */
export function bytesOf(hex: string): [number, number, number] {
  if (!/^#[0-9A-F]{6}$/.test(hex)) throw new Error(`not a colour: ${hex}`)
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as [number, number, number]
}

/** @param bytes 0 … 255 each, fractions allowed */
export function lightOf(bytes: readonly [number, number, number]): Light {
  return bytes.map((byte) => {
    const c = byte / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  }) as [number, number, number]
}

/** Relative luminance as WCAG 2.2 defines it, 0 … 1. */
export const luminanceOf = ([red, green, blue]: Light): number => 0.2126 * red + 0.7152 * green + 0.0722 * blue

/** Contrast of two colours as WCAG 2.2 defines it, 1 … 21. */
export function contrast(one: string, other: string): number {
  const [a, b] = [one, other].map((hex) => luminanceOf(lightOf(bytesOf(hex)))) as [number, number]
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}
