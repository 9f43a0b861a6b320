import { type Palette, palettes, type Theme } from '../scene/palette.ts'

const cssName = (name: string): string =>
  name.replaceAll(' ', '-').replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)

/** The interface's colours as CSS variables: `quietInk` → `--quiet-ink`, the tone `in time` → `--accent-in-time`. */
function paletteVariables(colours: Palette['interface']): readonly (readonly [name: string, value: string])[] {
  return Object.entries(colours).flatMap(([name, value]) =>
    typeof value === 'string'
      ? [[`--${cssName(name)}`, value] as const]
      : Object.entries(value).map(([tone, colour]) => [`--${cssName(name)}-${cssName(tone)}`, colour] as const),
  )
}

/** Gives the styles their colours, through the CSSOM: the policy allows no inline styles, and the colours have one home. */
export function applyPalette(root: HTMLElement, theme: Theme): void {
  for (const [name, value] of paletteVariables(palettes[theme].interface)) root.style.setProperty(name, value)
  root.style.setProperty('color-scheme', theme)
}
