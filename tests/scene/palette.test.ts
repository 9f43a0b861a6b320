import { describe, expect, it } from 'vitest'
import { palettes, type Theme } from '../../src/scene/palette.ts'
import type { Tone } from '../../src/scene/panelPicture.ts'
import { colourDeclarations, literalColours } from '../tools/cssColours.ts'
import { readSources } from '../tools/readSources.ts'
import { contrast } from '../tools/relativeLuminance.ts'

const TONES: readonly Tone[] = ['in time', 'late', 'early', 'other', 'plain']
const THEMES: readonly Theme[] = ['light', 'dark']

/** WCAG 2.2: text (1.4.3), and large text and what must be seen to understand (1.4.11). */
const TEXT = 4.5
const PART = 3

/** A token on its grounds, and the contrast that it keeps there. `accent` stands for each tone in turn. */
type Promise = readonly [token: string, grounds: readonly string[], least: number, what: string]

const STAGE: readonly Promise[] = [
  ['ink', ['floor', 'foot'], TEXT, 'counts, letters of the feet, waits; outlines, ghost, fault, tick, the page shown'],
  ['ink', ['accent'], PART, 'edge of the marker, outline and letter of a loaded foot, tick on the trail'],
  ['quietInk', ['floor'], TEXT, 'step numbers, scale bar, line of dance; ties'],
  ['quietInk', ['foot'], PART, 'ties over an empty foot'],
  ['accent', ['floor', 'foot'], PART, 'trail, beads, marker, the loaded part of a foot, edge of a wait'],
  ['placement', ['floor', 'foot'], PART, 'placements to come and past, rings of step numbers, the other pages'],
  ['pathToCome', ['floor'], PART, 'the way to come'],
]

/** Behind other things; what lies on them is promised above, by their own edges they say nothing. */
const STAGE_GROUNDS = ['page', 'floor', 'foot']

const STAGE_DECORATION: Readonly<Record<string, string>> = {
  floorEdge: 'the panel ends where its picture is cut off; its name and place say so too',
  floorLine: 'the 25 cm lines: the scale bar says how long things are',
  shadow: 'of a lifted foot, whose dashed outline says that it is lifted',
}

const INTERFACE: readonly Promise[] = [
  ['ink', ['page', 'surface'], TEXT, 'text; playhead and thumbs'],
  ['quietInk', ['page', 'surface'], TEXT, 'text that is read second; the strip’s lines where names are off'],
  ['problem', ['page', 'surface'], TEXT, 'what the problem is, and the edge beside it'],
  ['onAction', ['action'], TEXT, 'what is written on the large button and on pressed ones'],
  ['accentText', ['page', 'surface'], TEXT, 'names of the strip’s lines'],
  ['accent', ['page', 'surface', 'wait'], PART, 'lines of the strip, signs of the performances'],
  ['action', ['page', 'surface'], PART, 'the large button'],
  [
    'edge',
    ['page', 'surface'],
    PART,
    'edges of controls, grid of counts, sliders’ tracks; the count where it is not called',
  ],
  ['focus', ['page', 'surface'], PART, 'ring of the focused control, lines of the explanations'],
]

const INTERFACE_GROUNDS = ['page', 'surface', 'action', 'wait']

const INTERFACE_DECORATION: Readonly<Record<string, string>> = {
  line: 'parts rows that stand apart anyway, and the strip’s half beats and levels, whose counts and names are written',
}

/** Text in a colour that keeps 3:1 only, because it is large (WCAG: from 24 px, or bold from 18.7 px). */
const LARGE_TEXT: Readonly<Record<string, string>> = { '.count-now': 'edge' }

type Colours = Readonly<Record<string, string | Readonly<Record<string, string>>>>

/** [what, colour, ground, least] of each promise, each tone on its own. */
function pairsOf(colours: Colours, promises: readonly Promise[]): [string, string, string, number][] {
  const named = (token: string, tone: Tone): [string, string] => {
    const colour = colours[token]
    if (colour === undefined) throw new Error(`no token ${token}`)
    return typeof colour === 'string' ? [token, colour] : [`${token} ${tone}`, colour[tone] as string]
  }
  const all = promises.flatMap(([token, grounds, least]) =>
    grounds.flatMap((ground) =>
      TONES.map((tone): [string, string, string, number] => {
        const [[part, colour], [on, under]] = [named(token, tone), named(ground, tone)]
        return [`${part} on ${on}`, colour, under, least]
      }),
    ),
  )
  return [...new Map(all.map((pair) => [`${pair[0]} ${pair[3]}`, pair])).values()]
}

/** `--quiet-ink` → quietInk, `--accent-text-in-time` → accentText (`shown`: of the tone at hand), and other variables → null. */
function tokenOf(variable: string, tokens: readonly string[]): string | null {
  const camel = variable
    .replace(/-(in-time|late|early|other|plain|shown)$/, '')
    .replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase())
  return tokens.includes(camel) ? camel : null
}

describe('contrast(one, other)', () => {
  // Computed outside this project from WCAG's formula; colours of Okabe & Ito, Color Universal Design (2002/2008).
  it.each([
    ['#000000', '#FFFFFF', 21],
    ['#767676', '#FFFFFF', 4.542225],
    ['#777777', '#FFFFFF', 4.478089],
    ['#949494', '#FFFFFF', 3.03347],
    ['#959595', '#FFFFFF', 2.995346],
    ['#E69F00', '#FFFFFF', 2.252288],
    ['#E69F00', '#1B1B1B', 7.647506],
    ['#56B4E9', '#FFFFFF', 2.307482],
    ['#56B4E9', '#000000', 9.100828],
    ['#009E73', '#FFFFFF', 3.42114],
    ['#009E73', '#1B1B1B', 5.034691],
    ['#F0E442', '#1B1B1B', 13.025803],
    ['#0072B2', '#FFFFFF', 5.185446],
    ['#0072B2', '#1B1B1B', 3.321678],
    ['#0072B2', '#000000', 4.049796],
    ['#D55E00', '#FFFFFF', 3.867184],
    ['#D55E00', '#1B1B1B', 4.453986],
    ['#CC79A7', '#FFFFFF', 3.061034],
    ['#CC79A7', '#1B1B1B', 5.626982],
    ['#0072B2', '#D55E00', 1.340884],
  ])('%s on %s is %f', (one, other, value) => {
    expect(contrast(one, other).toFixed(6)).toBe(value.toFixed(6))
    expect(contrast(other, one)).toBe(contrast(one, other))
  })
})

describe.each(THEMES)('palettes.%s', (theme) => {
  const { stage, interface: ui } = palettes[theme]

  it.each(pairsOf(stage, STAGE))('stage: %s (%s, %s) keeps %f : 1', (_what, colour, ground, least) => {
    expect(contrast(colour, ground)).toBeGreaterThanOrEqual(least)
  })

  it.each(pairsOf(ui, INTERFACE))('interface: %s (%s, %s) keeps %f : 1', (_what, colour, ground, least) => {
    expect(contrast(colour, ground)).toBeGreaterThanOrEqual(least)
  })

  it('lets explanations be seen on the picture: their lines lie on floor and feet', () => {
    for (const ground of [stage.floor, stage.foot]) expect(contrast(ui.focus, ground)).toBeGreaterThanOrEqual(PART)
  })

  it('has the interface’s page behind the panels', () => {
    expect(stage.page).toBe(ui.page)
  })

  it('keeps the grid quieter than the way to come, and that quieter than the placements and the trail', () => {
    const on = (colour: string) => contrast(colour, stage.floor)
    expect(on(stage.floorLine)).toBeLessThan(on(stage.pathToCome) / 2)
    expect(on(stage.pathToCome)).toBeLessThan(on(stage.placement))
    for (const tone of TONES) expect(on(stage.pathToCome)).toBeLessThan(on(stage.accent[tone]))
  })

  it('gives each tone a colour of its own, but for names off, which are never seen together with others', () => {
    const { plain: _, ...named } = stage.accent
    expect(new Set(Object.values(named)).size).toBe(TONES.length - 1)
  })
})

describe('the table of promises', () => {
  it.each([
    ['stage', palettes.light.stage, STAGE, STAGE_GROUNDS, STAGE_DECORATION],
    ['interface', palettes.light.interface, INTERFACE, INTERFACE_GROUNDS, INTERFACE_DECORATION],
  ] as const)(
    '%s: every token is promised a contrast, or is a ground or a decoration',
    (_, tokens, promises, grounds, decoration) => {
      const named = [...promises.map(([token]) => token), ...grounds, ...Object.keys(decoration)]
      expect([...new Set(named)].sort()).toEqual(Object.keys(tokens).sort())
      for (const token of Object.keys(decoration)) expect(promises.map(([promised]) => promised)).not.toContain(token)
      for (const under of promises.flatMap(([, all]) => all)) expect([...grounds, 'accent']).toContain(under)
    },
  )

  it('the stage draws with every stage token, and with no other colour', async () => {
    const sources = Object.values(await readSources('src/stage', /\.ts$/)).join('\n')
    const used = [...sources.matchAll(/\b(?:palette|colours)\.(?!ts\b)(\w+)/g)].map(([, token = '']) => token)
    expect([...new Set(used)].sort()).toEqual(Object.keys(palettes.light.stage).sort())
    // White fills what cuts a panel's content to its shape; it is never seen.
    expect([...sources.matchAll(/(['"`])#[\da-f]{3,8}\1/gi)].map(([text]) => text)).toEqual(["'#ffffff'"])
  })
})

const sheets = await readSources('src/ui', /\.css$/)

describe('the style sheets', () => {
  const tokens = Object.keys(palettes.light.interface)
  const declared = Object.entries(sheets).flatMap(([path, sheet]) =>
    colourDeclarations(sheet).map((one) => ({ ...one, path })),
  )
  const least = (token: string): number => Math.max(...INTERFACE.filter(([name]) => name === token).map(([, , n]) => n))

  it('say colours, and all that the reader below finds are found', () => {
    expect(declared.length).toBeGreaterThan(50)
    const sheet = '/* color: red; */ a { color: red; } @media (forced-colors: active) { b:hover { fill: Mark; } }'
    const read = colourDeclarations(sheet)
    expect(read.map(({ selector, property, forced }) => [selector, property, forced])).toEqual([
      ['a', 'color', false],
      ['b:hover', 'fill', true],
    ])
    expect(read.map(literalColours)).toEqual([['red'], []])
  })

  it('have no colours of their own, but for shades of black behind a dialog and under a sheet, and the system’s', () => {
    const own = declared.flatMap((one) => literalColours(one).map((word) => `${one.path} ${one.selector}: ${word}`))
    expect(own).toEqual([])
  })

  it('take only tokens of the palette, besides lengths and a drawing that is made of both', () => {
    const lengths = ['target', 'radius', 'gap', 'ring', 'thumb', 'half-thumb', 'points']
    const drawings = ['thumb-picture', 'danced']
    const unknown = declared.flatMap((one) => one.tokens.filter((name) => tokenOf(name, tokens) === null))
    expect(unknown.filter((name) => ![...lengths, ...drawings].includes(name))).toEqual([])
  })

  it('write text only in colours that keep 4.5 : 1, or large', () => {
    const texts = declared.filter(({ property, selector, forced }) => {
      return !forced && (property === 'color' || (property === 'fill' && selector.includes('.strip-name')))
    })
    expect(texts.length).toBeGreaterThan(10)
    for (const { selector, tokens: names, path } of texts) {
      for (const name of names) {
        const token = tokenOf(name, tokens) as string
        const needed = LARGE_TEXT[selector] === token ? PART : TEXT
        expect(least(token), `${path} ${selector}: ${name}`).toBeGreaterThanOrEqual(needed)
      }
    }
  })

  it('lay things only on grounds, and draw edges, lines and marks only with what is promised 3 : 1 or is a decoration', () => {
    for (const { selector, property, tokens: names, path, forced } of declared) {
      if (forced || property === 'color') continue
      for (const token of names.map((name) => tokenOf(name, tokens)).filter((found) => found !== null)) {
        const known = INTERFACE_GROUNDS.includes(token) || token in INTERFACE_DECORATION || least(token) >= PART
        expect(known, `${path} ${selector} { ${property}: ${token} }`).toBe(true)
      }
    }
  })
})
