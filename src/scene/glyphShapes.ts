/**
 * Our own figures and letters for the floor, as the middle lines of round strokes: y = 0 is the foot of the capitals,
 * y = 1 their top, strokes of `GLYPH_STROKE` lie just inside. Written as paths (M, L, C, Z as in SVG, but y upwards), so
 * that screen, clip, print and SVG show the same letters whatever fonts a device has.
 */
export const GLYPH_STROKE = 0.135

export type GlyphShape = { readonly advance: number; readonly path: string }

/** Figures are all equally wide, so that counts do not jump sideways. */
const FIGURE = 0.72

const FIGURES: Readonly<Record<string, string>> = {
  0: 'M.36 .93C.53 .93 .61 .77 .61 .5C.61 .23 .53 .07 .36 .07C.19 .07 .11 .23 .11 .5C.11 .77 .19 .93 .36 .93Z',
  1: 'M.18 .75L.41 .93L.41 .07',
  2: 'M.13 .69C.14 .84 .23 .93 .36 .93C.5 .93 .59 .84 .59 .7C.59 .58 .52 .49 .41 .38L.12 .07L.61 .07',
  3: 'M.14 .77C.18 .87 .26 .93 .36 .93C.49 .93 .58 .85 .58 .73C.58 .6 .49 .52 .35 .52L.28 .52M.35 .52C.51 .52 .61 .43 .61 .3C.61 .16 .51 .07 .36 .07C.24 .07 .15 .13 .11 .24',
  4: 'M.49 .07L.49 .93L.09 .3L.65 .3',
  5: 'M.56 .93L.2 .93L.15 .5C.21 .56 .28 .59 .36 .59C.51 .59 .61 .49 .61 .33C.61 .17 .51 .07 .36 .07C.25 .07 .16 .12 .11 .22',
  6: 'M.56 .83C.52 .9 .46 .93 .39 .93C.2 .93 .11 .74 .11 .43C.11 .19 .2 .07 .36 .07C.51 .07 .61 .18 .61 .33C.61 .48 .51 .58 .37 .58C.25 .58 .15 .5 .12 .39',
  7: 'M.1 .93L.62 .93L.28 .07',
  8: 'M.36 .93C.48 .93 .57 .85 .57 .73C.57 .61 .48 .53 .36 .53C.24 .53 .15 .61 .15 .73C.15 .85 .24 .93 .36 .93ZM.36 .53C.51 .53 .61 .43 .61 .3C.61 .17 .51 .07 .36 .07C.21 .07 .11 .17 .11 .3C.11 .43 .21 .53 .36 .53Z',
  9: 'M.16 .17C.2 .1 .26 .07 .33 .07C.52 .07 .61 .26 .61 .57C.61 .81 .52 .93 .36 .93C.21 .93 .11 .82 .11 .67C.11 .52 .21 .42 .35 .42C.47 .42 .57 .5 .6 .61',
}

const OTHERS: Readonly<Record<string, GlyphShape>> = {
  S: {
    advance: 0.71,
    path: 'M.59 .76C.55 .87 .46 .93 .35 .93C.21 .93 .12 .85 .12 .73C.12 .61 .2 .56 .35 .52C.52 .47 .61 .42 .61 .29C.61 .16 .51 .07 .35 .07C.22 .07 .13 .13 .09 .24',
  },
  Q: {
    advance: 0.9,
    path: 'M.44 .93C.66 .93 .8 .75 .8 .5C.8 .25 .66 .07 .44 .07C.22 .07 .08 .25 .08 .5C.08 .75 .22 .93 .44 .93ZM.56 .27L.81 .0',
  },
  '&': {
    advance: 0.84,
    path: 'M.76 .07L.23 .67C.19 .72 .17 .75 .17 .79C.17 .87 .24 .93 .33 .93C.42 .93 .49 .87 .49 .79C.49 .69 .42 .63 .3 .55C.16 .46 .08 .39 .08 .27C.08 .15 .17 .07 .31 .07C.51 .07 .66 .2 .71 .43',
  },
  a: {
    advance: 0.66,
    path: 'M.13 .56C.17 .64 .24 .68 .33 .68C.46 .68 .54 .61 .54 .48L.54 .07M.54 .42L.35 .41C.18 .4 .09 .34 .09 .24C.09 .14 .17 .07 .28 .07C.43 .07 .54 .17 .54 .3',
  },
  L: { advance: 0.64, path: 'M.13 .93L.13 .07L.56 .07' },
  R: {
    advance: 0.72,
    path: 'M.13 .07L.13 .93L.36 .93C.52 .93 .61 .84 .61 .7C.61 .56 .52 .47 .36 .47L.13 .47M.39 .47L.63 .07',
  },
  c: {
    advance: 0.58,
    path: 'M.51 .55C.47 .63 .4 .68 .31 .68C.17 .68 .08 .56 .08 .375C.08 .19 .17 .07 .31 .07C.4 .07 .47 .12 .51 .2',
  },
  e: {
    advance: 0.6,
    path: 'M.09 .39L.52 .39C.52 .57 .43 .68 .3 .68C.17 .68 .08 .56 .08 .375C.08 .19 .17 .07 .32 .07C.41 .07 .47 .12 .51 .19',
  },
  f: { advance: 0.44, path: 'M.42 .92C.39 .93 .36 .93 .33 .93C.23 .93 .18 .87 .18 .77L.18 .07M.06 .64L.37 .64' },
  t: { advance: 0.46, path: 'M.18 .87L.18 .22C.18 .12 .23 .07 .32 .07C.35 .07 .38 .07 .41 .09M.06 .64L.38 .64' },
  m: {
    advance: 0.95,
    path: 'M.12 .07L.12 .68M.12 .48C.14 .6 .21 .68 .31 .68C.42 .68 .475 .61 .475 .48L.475 .07M.475 .48C.5 .6 .57 .68 .67 .68C.78 .68 .83 .61 .83 .48L.83 .07',
  },
  '-': { advance: 0.54, path: 'M.12 .47L.42 .47' },
  '×': { advance: 0.7, path: 'M.15 .27L.55 .67M.15 .67L.55 .27' },
  ' ': { advance: 0.34, path: '' },
}

/** For a sign that has no outline: an open box, so that nothing is left out unseen. */
const MISSING: GlyphShape = { advance: FIGURE, path: 'M.12 .07L.12 .93L.6 .93L.6 .07Z' }

/** The outline of one character; for one that we do not have, a box. */
export function glyphShape(character: string): GlyphShape {
  const figure = FIGURES[character]
  return figure === undefined ? (OTHERS[character] ?? MISSING) : { advance: FIGURE, path: figure }
}
