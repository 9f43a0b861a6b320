import { palettes, type StagePalette, type Theme } from '../../src/scene/palette.ts'
import type { Tone } from '../../src/scene/panelPicture.ts'
import { bytesOf, type Light, lightOf } from './relativeLuminance.ts'

export type StageColour = Exclude<keyof StagePalette, 'accent'> | Tone

/** What a drawing puts over what is there: the new colour's index by the old one's. */
export type Paint = (under: number) => number

/** The stage's colours and their mixtures as indices, so that one painted picture serves both themes. */
export type ColourTable = {
  solid(colour: StageColour): Paint
  /** @param alpha 0 … 1 */
  through(colour: StageColour, alpha: number): Paint
  /** How an index looks in a theme. @throws RangeError when there is no such index (yet) */
  light(theme: Theme, index: number): Light
}

type Bytes = readonly [number, number, number]
type Entry = Readonly<Record<Theme, Bytes>>

function bytesIn(theme: Theme, colour: StageColour): Bytes {
  const { accent, ...others } = palettes[theme].stage
  return bytesOf(colour in accent ? accent[colour as Tone] : others[colour as keyof typeof others])
}

export function colourTable(): ColourTable {
  const entries: Entry[] = []
  const solids = new Map<StageColour, number>()
  const paints = new Map<string, Paint>()

  const added = (entry: Entry): number => {
    if (entries.length > 255) throw new RangeError('more than 256 colours')
    return entries.push(entry) - 1
  }
  const indexOf = (colour: StageColour): number => {
    const known = solids.get(colour)
    if (known !== undefined) return known
    const index = added({ light: bytesIn('light', colour), dark: bytesIn('dark', colour) })
    solids.set(colour, index)
    return index
  }
  const mixed = (under: number, over: number, alpha: number): number => {
    const [ground, top] = [entries[under] as Entry, entries[over] as Entry]
    const blend = (theme: Theme) =>
      ground[theme].map((byte, k) => byte * (1 - alpha) + (top[theme][k] as number) * alpha) as unknown as Bytes
    return added({ light: blend('light'), dark: blend('dark') })
  }

  return {
    solid(colour) {
      const index = indexOf(colour)
      return () => index
    },
    through(colour, alpha) {
      const name = `${colour} ${alpha}`
      const before = paints.get(name)
      if (before !== undefined) return before
      const over = indexOf(colour)
      const known: number[] = []
      const paint: Paint = (under) => {
        known[under] ??= mixed(under, over, alpha)
        return known[under]
      }
      paints.set(name, paint)
      return paint
    },
    light(theme, index) {
      const entry = entries[index]
      if (entry === undefined) throw new RangeError(`there is no colour ${index}`)
      return lightOf(entry[theme])
    },
  }
}
