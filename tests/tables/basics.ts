/**
 * The basics of the ten dances as charts have them. Feet, alignments and turns: R parts read in Questions and Answers for
 * Ballroom Examinations (waltz turns), the IDTA revision cards, Dancing Tid-bits nos. 10, 34, 64, 108, 136, 180, an
 * analysis sheet of the feather step and a table of the cha-cha by beat (Wikibooks, Social Ballroom Dancing); the rest
 * from memory, and so for a teacher to check.
 *
 * `steps`: of each action the heading of the placed foot in eighths of a turn to the right of the line of dance (0; wall
 * 2, against 4, centre −2) and the way that the weight goes, in degrees likewise. `turn`: all of it, in eighths. Typed
 * from the charts, not computed. Where a chart names no alignment the figure starts at 0.
 */
export type Basic = {
  readonly name: string
  readonly text: string
  readonly steps: readonly (readonly [heading: number, way: number])[]
  readonly turn: number
}

const figure = (name: string, lines: string, actions: string): string =>
  `overfoot: 2\ntitle: ${name}\n${lines}\nactions:\n${actions
    .trim()
    .split('\n')
    .map((line) => `  - { direction: ${line.trim()} }`)
    .join('\n')}\n`

const head = (
  dance: string,
  role: string,
  foot: string,
  timing: string,
  starts: string | null,
  ends?: string,
): string =>
  [
    `dance: ${dance}`,
    `role: ${role}`,
    `first foot: ${foot}`,
    `timing: ${timing}`,
    ...(starts === null ? [] : [`starts: ${starts}`]),
    ...(ends === undefined ? [] : [`ends: ${ends}`]),
  ].join('\n')

const basic = (name: string, lines: string, actions: string, steps: Basic['steps'], turn: number): Basic => ({
  name,
  text: figure(name, lines, actions),
  steps,
  turn,
})

const DW = 'diagonally to wall'
const DC = 'diagonally to centre'
const LOD = 'line of dance'

export const basics: readonly Basic[] = [
  basic(
    'Waltz, right foot closed change, leader',
    head('waltz', 'leader', 'right', '1 2 3', `facing ${DC}`, `facing ${DC}`),
    `forward, alignment: facing ${DC}, footwork: HT
     side and slightly forward, alignment: facing ${DC}, footwork: T
     close, alignment: facing ${DC}, footwork: TH`,
    [
      [-1, -45],
      [-1, -115],
      [-1, 45],
    ],
    0,
  ),
  basic(
    'Waltz, right foot closed change, follower',
    head('waltz', 'follower', 'left', '1 2 3', `backing ${DC}`, `backing ${DC}`),
    `back, footwork: TH
     side and slightly back, footwork: T
     close, footwork: TH`,
    // Facing diagonally to wall against line of dance (3): back is −45; side to the right and a little back 135 + 110.
    [
      [3, -45],
      [3, -115],
      [3, 45],
    ],
    0,
  ),
  basic(
    'Waltz, natural turn, leader',
    head('waltz', 'leader', 'right', '1 2 3 1 2 3', `facing ${DW}`, `facing ${DC}`),
    `forward, alignment: facing ${DW}, footwork: HT
     side, turn: 1/4 right, alignment: backing ${DC}, footwork: T
     close, turn: 1/8 right, alignment: backing ${LOD}, footwork: TH
     back, alignment: backing ${LOD}, footwork: TH
     side, turn: 3/8 right, alignment: pointing ${DC}, footwork: T
     close, alignment: facing ${DC}, footwork: TH`,
    // The second step goes on the way of the first.
    [
      [1, 45],
      [3, 45],
      [4, -90],
      [4, 0],
      [-1, 45],
      [-1, -135],
    ],
    6,
  ),
  basic(
    'Waltz, natural turn, follower',
    head('waltz', 'follower', 'left', '1 2 3 1 2 3', `backing ${DW}`, `backing ${DC}`),
    `back, alignment: backing ${DW}, footwork: TH
     side, turn: 3/8 right, alignment: pointing ${LOD}, footwork: T
     close, alignment: facing ${LOD}, footwork: TH
     forward, alignment: facing ${LOD}, footwork: HT
     side, turn: 1/4 right, alignment: backing centre, footwork: T
     close, turn: 1/8 right, alignment: backing ${DC}, footwork: TH`,
    [
      [-3, 45],
      [0, 90],
      [0, -90],
      [0, 0],
      [2, 0],
      [3, -135],
    ],
    6,
  ),
  basic(
    'Waltz, reverse turn, leader',
    head('waltz', 'leader', 'left', '1 2 3 1 2 3', `facing ${DC}`, `facing ${DW}`),
    `forward, alignment: facing ${DC}, footwork: HT
     side, turn: 1/4 left, alignment: backing ${DW}, footwork: T
     close, turn: 1/8 left, alignment: backing ${LOD}, footwork: TH
     back, alignment: backing ${LOD}, footwork: TH
     side, turn: 3/8 left, alignment: pointing ${DW}, footwork: T
     close, alignment: facing ${DW}, footwork: TH`,
    [
      [-1, -45],
      [-3, -45],
      [4, 90],
      [4, 0],
      [1, -45],
      [1, 135],
    ],
    -6,
  ),
  basic(
    'Waltz, reverse turn, follower',
    head('waltz', 'follower', 'right', '1 2 3 1 2 3', `backing ${DC}`, `backing ${DW}`),
    `back, alignment: backing ${DC}, footwork: TH
     side, turn: 3/8 left, alignment: pointing ${LOD}, footwork: T
     close, alignment: facing ${LOD}, footwork: TH
     forward, alignment: facing ${LOD}, footwork: HT
     side, turn: 1/4 left, alignment: backing wall, footwork: T
     close, turn: 1/8 left, alignment: backing ${DW}, footwork: TH`,
    [
      [3, -45],
      [0, -90],
      [0, 90],
      [0, 0],
      [-2, 0],
      [-3, 135],
    ],
    -6,
  ),
  basic(
    'Waltz, whisk, leader',
    head('waltz', 'leader', 'left', '1 2 3', `facing ${DW}`, `facing ${DW}`),
    `forward, alignment: facing ${DW}, footwork: HT
     side and slightly forward, alignment: facing ${DW}, footwork: T
     cross behind, position: promenade, alignment: facing ${DW}, footwork: TH`,
    // Behind the other foot and over to its far side.
    [
      [1, 45],
      [1, 115],
      [1, 205],
    ],
    0,
  ),
  basic(
    'Waltz, chassé from promenade, leader',
    head('waltz', 'leader', 'right', '1 2 & 3', `pointing ${DW}`, `facing ${DW}`),
    `forward, placed: across, position: promenade, alignment: pointing ${DW}, footwork: HT
     side and slightly forward, alignment: facing ${DW}, footwork: T
     close, alignment: facing ${DW}, footwork: T
     side and slightly forward, alignment: facing ${DW}, footwork: TH`,
    [
      [1, 45],
      [1, -25],
      [1, 135],
      [1, -25],
    ],
    0,
  ),
  basic(
    'Quickstep, quarter turn to right, leader',
    head('quickstep', 'leader', 'right', 'S Q Q S', `facing ${DW}`, `backing ${DC}`),
    `forward, alignment: facing ${DW}, footwork: HT
     side, turn: 1/8 right, footwork: T
     close, turn: 1/8 right, alignment: backing ${DC}, footwork: T
     side and slightly back, alignment: backing ${DC}, footwork: TH`,
    [
      [1, 45],
      [2, 0],
      [3, -135],
      [3, 25],
    ],
    2,
  ),
  basic(
    'Quickstep, progressive chassé, leader',
    head('quickstep', 'leader', 'right', 'S Q Q S', `backing ${DC}`, `pointing ${DW}`),
    `back, alignment: backing ${DC}, footwork: TH
     side, turn: 1/4 left, alignment: pointing ${DW}, footwork: T
     close, footwork: T
     side and slightly forward, alignment: pointing ${DW}, footwork: TH`,
    [
      [3, -45],
      [1, -45],
      [1, 135],
      [1, -25],
    ],
    -2,
  ),
  basic(
    'Quickstep, progressive chassé, follower',
    head('quickstep', 'follower', 'left', 'S Q Q S', `facing ${DC}`, `backing ${DW}`),
    `forward, alignment: facing ${DC}, footwork: HT
     side, turn: 1/8 left, alignment: backing wall, footwork: T
     close, turn: 1/8 left, alignment: backing ${DW}, footwork: T
     side and slightly back, alignment: backing ${DW}, footwork: TH`,
    [
      [-1, -45],
      [-2, 0],
      [-3, 135],
      [-3, -25],
    ],
    -2,
  ),
  basic(
    'Foxtrot, feather step, leader',
    head('foxtrot', 'leader', 'right', 'S Q Q', `facing ${DC}`, `facing ${DC}`),
    `forward, alignment: facing ${DC}, footwork: HT
     forward, leading: left side, footwork: T
     forward, placed: in CBMP, position: outside partner, footwork: TH`,
    [
      [-1, -45],
      [-1, -45],
      [-1, -45],
    ],
    0,
  ),
  basic(
    'Foxtrot, three step, leader',
    head('foxtrot', 'leader', 'left', 'S Q Q', null),
    `forward, footwork: H
     forward, leading: right side, footwork: HT
     forward, footwork: TH`,
    [
      [0, 0],
      [0, 0],
      [0, 0],
    ],
    0,
  ),
  basic(
    'Foxtrot, reverse turn and feather finish, leader',
    head('foxtrot', 'leader', 'left', 'S Q Q S Q Q', `facing ${DC}`, `facing ${DW}`),
    `forward, alignment: facing ${DC}, footwork: HT
     side, turn: 1/4 left, alignment: backing ${DW}, footwork: T
     back, turn: 1/8 left, alignment: backing ${LOD}, footwork: TH
     back, alignment: backing ${LOD}, footwork: TH(T)
     side and slightly forward, turn: 3/8 left, alignment: pointing ${DW}, footwork: T
     forward, placed: in CBMP, position: outside partner, alignment: facing ${DW}, footwork: TH`,
    [
      [-1, -45],
      [-3, -45],
      [4, 0],
      [4, 0],
      [1, -25],
      [1, 45],
    ],
    -6,
  ),
  basic(
    'Foxtrot, reverse turn and feather finish, follower',
    head('foxtrot', 'follower', 'right', 'S Q Q S Q Q', `backing ${DC}`, `backing ${DW}`),
    `back, alignment: backing ${DC}, footwork: TH
     close, heel turn: 3/8 left, alignment: facing ${LOD}, footwork: HT
     forward, alignment: facing ${LOD}, footwork: TH
     forward, alignment: facing ${LOD}, footwork: HT
     side and slightly back, turn: 1/4 left, alignment: backing wall, footwork: TH
     back, placed: in CBMP, turn: 1/8 left, alignment: backing ${DW}, footwork: TH`,
    [
      [3, -45],
      [0, -90],
      [0, 0],
      [0, 0],
      [-2, 20],
      [-3, 45],
    ],
    -6,
  ),
  basic(
    'Tango, two walks and progressive link, leader',
    head('tango', 'leader', 'left', 'S S Q Q', null),
    `forward, placed: in CBMP, footwork: H
     forward, leading: right side, footwork: H
     forward, placed: in CBMP, footwork: H
     side and slightly back, position: promenade, footwork: inside edge of B`,
    [
      [0, 0],
      [0, 0],
      [0, 0],
      [0, 110],
    ],
    0,
  ),
  basic(
    'Tango, closed promenade, leader',
    head('tango', 'leader', 'left', 'S Q Q S', null),
    `side, position: promenade, footwork: H
     forward, placed: across, position: promenade, footwork: H
     side and slightly forward, footwork: "inside edge, whole foot"
     close slightly back, footwork: whole foot`,
    [
      [0, -90],
      [0, 0],
      [0, -70],
      [0, 125],
    ],
    0,
  ),
  basic(
    // About half a turn in each bar; the eighths that link it to its neighbours are counted in.
    'Viennese waltz, natural turn, leader',
    head('viennese waltz', 'leader', 'right', '1 2 3 1 2 3', `facing ${LOD}`, `facing ${LOD}`),
    `forward, footwork: HT
     side, turn: 1/4 right, footwork: T
     close, turn: 1/4 right, footwork: TH
     back and slightly side, footwork: T
     side, turn: 1/4 right, footwork: T
     close, turn: 1/4 right, footwork: flat`,
    [
      [0, 0],
      [2, 0],
      [4, -90],
      [4, 20],
      [-2, 0],
      [0, -90],
    ],
    8,
  ),
  basic(
    'Rumba, basic movement, leader',
    head('rumba', 'leader', 'left', '2 3 4-1 2 3 4-1', null),
    `forward, footwork: BF
     in place, footwork: BF
     side and slightly back, turn: 1/8 left, footwork: BF
     back, footwork: BF
     in place, footwork: BF
     side and slightly forward, turn: 1/8 left, footwork: BF`,
    [
      [0, 0],
      [0, 180],
      [-1, -155],
      [-1, 135],
      [-1, -45],
      [-2, -20],
    ],
    -2,
  ),
  basic(
    'Cha-cha-cha, basic movement, leader',
    head('cha-cha-cha', 'leader', 'left', '2 3 4 & 1 2 3 4 & 1', null),
    `forward, size: 50 cm, footwork: BF
     in place, footwork: BF
     side, footwork: BF
     half close, footwork: BF
     side, footwork: BF
     back, size: 50 cm, footwork: BF
     in place, footwork: BF
     side, footwork: BF
     half close, footwork: BF
     side, footwork: BF`,
    [
      [0, 0],
      [0, 180],
      [0, -90],
      [0, 90],
      [0, -90],
      [0, 180],
      [0, 0],
      [0, 90],
      [0, -90],
      [0, 90],
    ],
    0,
  ),
  basic(
    // Up to a quarter to the right.
    'Samba, natural basic, leader',
    head('samba', 'leader', 'right', '1 a 2 1 a 2', null),
    `forward, turn: 1/8 right, footwork: BF
     close, weight: half, footwork: B
     in place, footwork: BF
     back, turn: 1/8 right, footwork: BF
     close, weight: half, footwork: B
     in place, footwork: BF`,
    [
      [1, 45],
      [1, -45],
      [1, 135],
      [2, -90],
      [2, 180],
      [2, 0],
    ],
    2,
  ),
  basic(
    'Jive, basic in place and fallaway rock, leader',
    head('jive', 'leader', 'left', 'Q Q Q a Q Q a Q', null),
    `back, footwork: BF
     in place, footwork: BF
     slightly side, footwork: BF
     half close, footwork: BF
     side, footwork: BF
     side, footwork: BF
     half close, footwork: BF
     side, footwork: BF`,
    [
      [0, 180],
      [0, 0],
      [0, -90],
      [0, 90],
      [0, -90],
      [0, 90],
      [0, -90],
      [0, 90],
    ],
    0,
  ),
]
