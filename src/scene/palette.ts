import type { Tone } from './panelPicture.ts'

/**
 * Every colour of the program, for both themes, named by what it means. The tones are the ones of Okabe & Ito's
 * colour-blind-safe set that keep 3:1 on light and on dark (bluish green, vermillion, blue, reddish purple; purple for
 * all where names are off; darker on the light theme, where the original misses 3:1). No meaning rests on a colour alone.
 * `tests/scene/palette.test.ts` computes each pair that is promised here (WCAG 2.2, 1.4.3 and 1.4.11).
 */
export type StagePalette = {
  /** Behind and between the panels. */
  readonly page: string
  readonly floor: string
  /** A panel's edge; decoration. */
  readonly floorEdge: string
  /** The 25 cm lines; decoration, so below 3:1 on purpose. */
  readonly floorLine: string
  /** The weight's way that is still to come, in dots: 3:1 on the floor, and hardly more, for the trail is what counts. */
  readonly pathToCome: string
  /** Outlines of past and coming placements: 3:1 on the floor. */
  readonly placement: string
  /** Outlines, the fault's line, counts: text on floor and foot. */
  readonly ink: string
  /** Step numbers, scale bar, arrow: text on the floor. */
  readonly quietInk: string
  /** The part of a foot that carries nothing. */
  readonly foot: string
  /** Under a lifted foot; drawn with little opacity, in layers. */
  readonly shadow: string
  /** Trail, beads, filled part of a foot, marker: 3:1 on floor and foot. */
  readonly accent: Readonly<Record<Tone, string>>
}

export type InterfacePalette = {
  readonly page: string
  /** Cards, strip, menus. */
  readonly surface: string
  /** Parts lines: decoration. */
  readonly line: string
  /** Edges of controls and the grid's count lines: 3:1 on page and surface. */
  readonly edge: string
  readonly ink: string
  readonly quietInk: string
  /** The one large button, and what is written on it. */
  readonly action: string
  readonly onAction: string
  /** Ring of the focused control: 3:1 on page and surface. */
  readonly focus: string
  /** Where a weight waits, behind the strip's lines. */
  readonly wait: string
  readonly problem: string
  /** A tone as a line or mark: 3:1 on page, surface and wait. */
  readonly accent: Readonly<Record<Tone, string>>
  /** A tone as text: 4.5:1 on page and surface. */
  readonly accentText: Readonly<Record<Tone, string>>
}

export type Palette = { readonly stage: StagePalette; readonly interface: InterfacePalette }
export type Theme = 'light' | 'dark'

const lightAccent: Readonly<Record<Tone, string>> = {
  'in time': '#009E73',
  late: '#D55E00',
  early: '#0072B2',
  other: '#A8518A',
  plain: '#A8518A',
}

const darkAccent: Readonly<Record<Tone, string>> = {
  'in time': '#009E73',
  late: '#D55E00',
  early: '#0072B2',
  other: '#BF6A9B',
  plain: '#BF6A9B',
}

const light: Palette = {
  stage: {
    page: '#F7F4ED',
    floor: '#FCFAF5',
    floorEdge: '#DDD6C8',
    floorLine: '#ECE6DA',
    pathToCome: '#968F81',
    placement: '#938C7E',
    ink: '#1D1A16',
    quietInk: '#5F594E',
    foot: '#FFFFFF',
    shadow: '#7A6E5C',
    accent: lightAccent,
  },
  interface: {
    page: '#F7F4ED',
    surface: '#FFFFFF',
    line: '#E2DBCE',
    edge: '#857E70',
    ink: '#1D1A16',
    quietInk: '#5F594E',
    action: '#1D1A16',
    onAction: '#FFFFFF',
    focus: '#7A3FB0',
    wait: '#F8F5EE',
    problem: '#B3261E',
    accent: lightAccent,
    accentText: { 'in time': '#00714F', late: '#A94A00', early: '#00639B', other: '#8F3F74', plain: '#8F3F74' },
  },
}

const dark: Palette = {
  stage: {
    page: '#121110',
    floor: '#1E1D1A',
    floorEdge: '#38352F',
    floorLine: '#2B2924',
    pathToCome: '#706A5E',
    placement: '#7F786B',
    ink: '#F7F3EA',
    quietInk: '#B4AD9F',
    foot: '#0F0E0D',
    shadow: '#000000',
    accent: darkAccent,
  },
  interface: {
    page: '#121110',
    surface: '#1E1D1A',
    line: '#38352F',
    edge: '#8C8577',
    ink: '#F7F3EA',
    quietInk: '#B4AD9F',
    action: '#F7F3EA',
    onAction: '#1E1D1A',
    focus: '#D3B0F5',
    wait: '#1A1917',
    problem: '#FF9C8F',
    accent: darkAccent,
    accentText: { 'in time': '#2DC79B', late: '#F58B3C', early: '#5FB4EA', other: '#E09CC2', plain: '#E09CC2' },
  },
}

export const palettes: Readonly<Record<Theme, Palette>> = { light, dark }
