import type { Figure, Role } from '../figure/figure.ts'
import type { Seen } from '../scene/view.ts'
import { partnerWords } from './partnerWords.ts'

const SEEN: Readonly<Record<Seen, string>> = {
  dancer: 'As the dancer stands: forward is up',
  class: 'Facing the class',
  mirror: 'Facing the class, in a mirror: to dance along',
  room: 'As the room lies: line of dance',
}

const ROLES: Readonly<Record<Role, string>> = { leader: 'Leader', follower: 'Follower' }

/** What is said about ways to show a figure, about teaching with it, and about the marks in the picture. */
export const showWords = {
  show: 'Show',
  showHint: 'Which pictures, from where, and for whom',
  close: 'Close',

  pictures: 'Pictures, from left to right',
  toTheLeft: (name: string) => `${name}: further to the left`,
  toTheRight: (name: string) => `${name}: further to the right`,
  namesAreOff: 'Names are off. Show them first: this list would give the answer away.',

  seen: 'The floor',
  seenName: (seen: Seen) => SEEN[seen],
  mirrored: 'in a mirror',

  part: 'Steps of the',
  partName: (role: Role) => ROLES[role],
  /** Beside the figure's name when the part was made by rule. @param written the figure as it was written */
  opposite: (written: Figure) => partnerWords(written),

  colours: 'Colours',
  colourNames: { system: 'As the device', light: 'Light', dark: 'Dark' },

  slow: 'A slow, two ways, and timing or dynamics',
  table: 'As a table',
  tableHint: 'The figure as a table of half beats',
  tableTitle: (title: string) => `${title}, half beat by half beat`,
  tableColumns: { count: 'Count', step: 'Step' },
  goTo: (count: string) => `Go to ${count}`,

  steps: 'This step',
  stepsHint: 'Loop this step with the one before it',

  teach: 'Full screen',
  teachHint: 'The picture alone: for teaching',
  /** Apart from the large button, which is there for the keyboard. */
  inTeaching: (word: string) => `${word}, or press the picture`,
  leaveTeaching: 'Leave full screen',

  explain: 'What is what',
  keys: 'Keys',
  allKeys: 'All keys',
  keysIntro: 'On the page, unless a list or a field has the keyboard:',
  singleKeys: 'Single letters, figures and signs act',

  /** Written on the picture. */
  marks: {
    weight: 'the weight',
    carries: 'filled: it carries',
    air: 'dashed: in the air',
    bead: 'a bead each half beat',
    coming: 'where feet come to stand',
    ghost: 'here it should be',
    fault: 'how far off',
    tick: 'the bead’s place in time',
    wait: 'it waits: half beats',
  },
  marksOfStrip:
    'up: over the right foot; down: over the left; shaded: it waits; »: it hurries; bars: how far off; drag along it: a loop',
  marksOfSlider: 'drag by half beats, or ← →',

  /** In a picture that turns pages. */
  page: ({ index, count }: { readonly index: number; readonly count: number }) =>
    count < 2 ? '' : `page ${index + 1} of ${count}`,
} as const
