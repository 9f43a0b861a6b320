import { type Light, luminanceOf } from './relativeLuminance.ts'

// WCAG 2.2, SC 2.3.1 and its glossary term "general flash and red flash thresholds".
const LEAST_CHANGE = 0.1
const DARKER_BELOW = 0.8
const SATURATED_RED = 0.8
const RED_CHANGE = 0.2

/** Pictures a second. */
export const FRAME_RATE = 60

/** The picture in which a cell's change is complete, twice, and one more where it goes up: there are very many of them. */
export type Change = number
export const changeOf = (frame: number, up: boolean): Change => 2 * frame + (up ? 1 : 0)
export const frameOf = (change: Change): number => change >> 1
export const isUp = (change: Change): boolean => (change & 1) === 1

/** Each cell's changes in time; nothing for a cell without. */
export type Changes = readonly (readonly Change[] | undefined)[]

export type FlashWatch = {
  /** @param cells the index of each cell's colour, four times n of them; pictures come in order, 1/60 s apart */
  see(cells: Uint8Array): void
  readonly general: Changes
  readonly red: Changes
  frames(): number
}

/** CIE 1976 u′, v′ of light in sRGB's primaries (IEC 61966-2-1); black is put where white is. */
function chromaticity([r, g, b]: Light): [number, number] {
  const x = 0.4124 * r + 0.3576 * g + 0.1805 * b
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b
  const z = 0.0193 * r + 0.1192 * g + 0.9505 * b
  const sum = x + 15 * y + 3 * z
  return sum === 0 ? [0.1978, 0.4683] : [(4 * x) / sum, (9 * y) / sum]
}

/** By the share of red light: the glossary leaves open whether light or code values are meant, and of light more is red. */
const isRed = ([r, g, b]: Light): boolean => r / (r + g + b) >= SATURATED_RED

/** Whether going from one colour to another is half of a red flash. */
export function isRedChange(from: Light, to: Light): boolean {
  if (!isRed(from) && !isRed(to)) return false
  const [[u0, v0], [u1, v1]] = [chromaticity(from), chromaticity(to)]
  return Math.hypot(u1 - u0, v1 - v0) > RED_CHANGE
}

const isGeneralChange = (from: number, to: number): boolean =>
  Math.abs(to - from) >= LEAST_CHANGE && Math.min(from, to) < DARKER_BELOW

/**
 * Watches pictures and notes every cell's changes: from each peak or valley to the next by at least a tenth.
 * @param lightAt the light of a colour index; asked once for each
 */
function flashWatch(lightAt: (index: number) => Light): FlashWatch {
  const lights: Light[] = []
  const luminances: number[] = []
  const redPairs: boolean[][] = []
  const general: Change[][] = []
  const red: Change[][] = []
  let shown: Uint8Array = new Uint8Array()
  let redFrom = new Uint8Array()
  // The same cells, four in a word.
  let seen = shown
  let now: Uint32Array = new Uint32Array()
  let before: Uint32Array = now
  // The brightest and the darkest since the last change, and which way that one went.
  let high = new Float64Array()
  let low = new Float64Array()
  let way = new Int8Array()
  let frame = 0

  const note = (changes: Change[][], cell: number, up: boolean): void => {
    const known = changes[cell]
    if (known === undefined) changes[cell] = [changeOf(frame, up)]
    else known.push(changeOf(frame, up))
  }

  const learn = (colour: number): void => {
    const light = lightAt(colour)
    lights[colour] = light
    luminances[colour] = luminanceOf(light)
    redPairs[colour] = []
    lights.forEach((other, index) => {
      ;(redPairs[colour] as boolean[])[index] = isRedChange(light, other)
      ;(redPairs[index] as boolean[])[colour] = isRedChange(other, light)
    })
  }

  const luminance = (colour: number): number => {
    if (luminances[colour] === undefined) learn(colour)
    return luminances[colour] as number
  }

  const seeCell = (cell: number, colour: number): void => {
    const now = luminance(colour)
    const brightest = high[cell] as number
    const darkest = low[cell] as number
    const went = way[cell] as number
    const falls = went >= 0 && now < brightest && isGeneralChange(brightest, now)
    const rises = went <= 0 && now > darkest && isGeneralChange(darkest, now)
    if (falls || rises) {
      note(general, cell, rises)
      way[cell] = rises ? 1 : -1
      high[cell] = now
      low[cell] = now
    } else {
      high[cell] = Math.max(brightest, now)
      low[cell] = Math.min(darkest, now)
    }
    const before = redFrom[cell] as number
    if (redPairs[before]?.[colour]) {
      note(red, cell, isRed(lights[colour] as Light))
      redFrom[cell] = colour
    }
  }

  return {
    general,
    red,
    frames: () => frame,
    see(cells) {
      if (frame === 0) {
        shown = cells.slice()
        before = new Uint32Array(shown.buffer)
        redFrom = cells.slice()
        high = Float64Array.from(cells, luminance)
        low = high.slice()
        way = new Int8Array(cells.length)
      }
      // Four cells at a glance: most stay as they are.
      if (seen !== cells) {
        seen = cells
        now = new Uint32Array(cells.buffer)
      }
      for (let four = 0; four < now.length; four++) {
        if (now[four] === before[four]) continue
        for (let cell = 4 * four; cell < 4 * four + 4; cell++) {
          const colour = cells[cell] as number
          if (colour !== shown[cell]) seeCell(cell, colour)
        }
        before[four] = now[four] as number
      }
      frame++
    },
  }
}

/** One watch a list of colours: all see the same pictures. */
export function watched(frames: Iterable<Uint8Array>, ...lights: readonly ((index: number) => Light)[]): FlashWatch[] {
  const watches = lights.map(flashWatch)
  for (const frame of frames) for (const watch of watches) watch.see(frame)
  return watches
}
