import { SLOW_PRACTICE } from './slowPractice.ts'

const many = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`
const percent = (speed: number): string => `${Math.round(speed * 100)} %`

/** Below this part of the usual tempo there is no swing to carry a dancer. Usual advice. */
const HALF_TEMPO = 0.5

/** Where one is on the ladder: what `session/ladder.ts` says of it. */
type Where = {
  readonly speed: number
  readonly number: number
  readonly of: number
  readonly loop: number
  readonly loops: number
  readonly countIn: number
  readonly held: boolean
  readonly waits: boolean
  readonly isThrough: boolean
}

/** What comes after where one is. */
function next({ waits, isThrough }: Where): string {
  if (isThrough) return 'Through: it goes on at this speed.'
  return waits ? 'Press “Faster” to go up.' : ''
}

/** What is said of building up from slow to full. */
export const ladderWords = {
  /** The sheet that holds it, with the loop and the taps. */
  practice: 'Practice',
  hint: 'A part over and over, from slow to full tempo, with your own music',
  title: 'From slow to full tempo',
  /** The same where there is little room. */
  tab: 'Slow to full',

  from: 'From',
  to: 'To',
  steps: 'Speeds',
  stepsText: (steps: number): string => many(steps, 'speed'),
  loops: 'Loops at each',
  loopsText: (loops: number): string => many(loops, 'loop'),
  onTap: 'Climb only when I say so',
  speed: percent,

  start: 'Start',
  goOn: 'Go on from there',
  otherwise: 'Change this',
  stop: 'Stop climbing',
  hold: 'Hold',
  holdHint: 'Stay at this speed',
  /** What was held goes on. */
  letGo: 'Go on',
  letGoHint: 'Climb on after the next loop',
  back: 'Slower',
  backHint: 'One speed back',
  up: 'Faster',
  upHint: 'One speed up, now',

  /** "From 50 to 100 % in 6 speeds, 4 loops at each: 24 loops. Before each speed 1 bar is counted in." */
  plan: ({
    from,
    to,
    steps,
    loops,
    countIn,
  }: {
    readonly from: number
    readonly to: number
    readonly steps: number
    readonly loops: number
    readonly countIn: number
  }) =>
    (steps === 1
      ? `At ${percent(to)}: ${many(loops, 'loop')}.`
      : `From ${Math.round(from * 100)} to ${percent(to)} in ${many(steps, 'speed')}, ${many(loops, 'loop')} at each: ${steps * loops} loops.`) +
    ` ${many(countIn, 'bar')} of counting in before ${steps === 1 ? 'it' : 'each speed'}.`,
  /** "Speed 3 of 6: 70 %, held. Loop 2 of 4." In one line on a phone, so that nothing moves under a finger. */
  where: (where: Where): string =>
    [
      `Speed ${where.number} of ${where.of}: ${percent(where.speed)}${where.held && !where.isThrough ? ', held' : ''}.`,
      where.isThrough ? '' : `Loop ${where.loop} of ${where.loops}.`,
      next(where),
    ]
      .filter((part) => part !== '')
      .join(' '),
  /** When a figure is opened whose ladder was begun before; '' where it was not. */
  remembered: ({ number, of, speed }: Where): string =>
    number === 1 ? '' : `You have come to speed ${number} of ${of}, ${percent(speed)}.`,
  fromStart: 'Begin again at the slowest',
  again: 'Again',
  /** Why it does not go on. */
  ended: {
    tempo: 'The tempo was set otherwise: it no longer climbs.',
    stopped: 'It no longer climbs, and goes on at this tempo.',
  },
  climbOn: 'Climb on',

  /** Where a speed is below half tempo; '' elsewhere. @param speed 1 = the usual tempo */
  caution: (speed: number): string => (speed < HALF_TEMPO - 1e-9 ? SLOW_PRACTICE : ''),
  asleep: 'This browser does not keep the screen on: it may go dark while you dance.',
  cautionsInShort: 'Floor clear, warmed up, sound low, eyes off the screen; stop when something hurts.',
  /** Where practice is offered. */
  cautions: [
    'Clear the floor, and warm up first.',
    'Keep the sound low enough to talk over.',
    'Do not watch the screen while you travel.',
    'Stop when something hurts. Hold, or go back, when a speed falls apart: nothing is lost.',
  ],
} as const
