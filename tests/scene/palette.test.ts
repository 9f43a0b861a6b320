import { describe, expect, it } from 'vitest'
import { palettes, type Theme } from '../../src/scene/palette.ts'
import type { Tone } from '../../src/scene/panelPicture.ts'

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  if (!/^#[0-9A-F]{6}$/.test(hex)) throw new Error(`not a colour: ${hex}`)
  const [r, g, b] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [number, number, number]
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)]
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}

const TONES: readonly Tone[] = ['in time', 'late', 'early', 'plain']
const THEMES: readonly Theme[] = ['light', 'dark']

/** [what, colour, on what, ground, least contrast] */
type Pair = readonly [string, string, string, string, number]

function pairsOf(theme: Theme): Pair[] {
  const { stage, interface: ui } = palettes[theme]
  const pairs: Pair[] = [
    ['placement', stage.placement, 'floor', stage.floor, 3],
    ['ink', stage.ink, 'floor', stage.floor, 4.5],
    ['ink', stage.ink, 'foot', stage.foot, 4.5],
    ['quiet ink', stage.quietInk, 'floor', stage.floor, 4.5],
    ['on action', ui.onAction, 'action', ui.action, 4.5],
  ]
  for (const tone of TONES) {
    pairs.push([`accent ${tone}`, stage.accent[tone], 'floor', stage.floor, 3])
    pairs.push([`accent ${tone}`, stage.accent[tone], 'foot', stage.foot, 3])
    pairs.push([`ink edge`, stage.ink, `accent ${tone}`, stage.accent[tone], 3])
    pairs.push([`accent ${tone}`, ui.accent[tone], 'wait', ui.wait, 3])
  }
  for (const ground of ['page', 'surface'] as const) {
    for (const text of ['ink', 'quietInk', 'problem'] as const) pairs.push([text, ui[text], ground, ui[ground], 4.5])
    for (const part of ['edge', 'focus', 'action'] as const) pairs.push([part, ui[part], ground, ui[ground], 3])
    for (const tone of TONES) {
      pairs.push([`accent ${tone}`, ui.accent[tone], ground, ui[ground], 3])
      pairs.push([`accent text ${tone}`, ui.accentText[tone], ground, ui[ground], 4.5])
    }
  }
  return pairs
}

describe('contrast, the formula', () => {
  it.each([
    ['#000000', '#FFFFFF', 21],
    ['#767676', '#FFFFFF', 4.542225],
    ['#777777', '#FFFFFF', 4.47809],
    ['#949494', '#FFFFFF', 3.03347],
    ['#959595', '#FFFFFF', 2.995346],
    ['#009E73', '#FFFFFF', 3.42114],
    ['#0072B2', '#1B1B1B', 3.321678],
    ['#CC79A7', '#FFFFFF', 3.061034],
  ])('%s on %s is %f', (one, other, value) => {
    expect(contrast(one, other)).toBeCloseTo(value, 5)
    expect(contrast(other, one)).toBe(contrast(one, other))
  })
})

describe.each(THEMES)('palettes.%s', (theme) => {
  it.each(pairsOf(theme))('%s %s on %s %s keeps %f : 1', (_what, colour, _on, ground, least) => {
    expect(contrast(colour, ground)).toBeGreaterThanOrEqual(least)
  })

  it('keeps the grid quieter than everything that has a meaning', () => {
    const { stage } = palettes[theme]
    expect(contrast(stage.floorLine, stage.floor)).toBeLessThan(contrast(stage.placement, stage.floor) / 2)
    expect(contrast(stage.pathToCome, stage.floor)).toBeLessThan(contrast(stage.placement, stage.floor))
  })

  it('gives each tone a colour of its own', () => {
    expect(new Set(Object.values(palettes[theme].stage.accent)).size).toBe(TONES.length)
  })
})
