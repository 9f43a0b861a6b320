import type { Dance } from '../dance/dance.ts'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import { speedOf } from '../dance/speed.ts'
import type { Dynamics } from '../scene/dynamicsStrips.ts'
import type { SlowTwoWays, TravelledStep } from '../scene/slowTwoWays.ts'
import { beatsInWords, fraction } from './fraction.ts'
import { labels } from './labels.ts'
import { SLOW_PRACTICE } from './slowPractice.ts'

const NAMES: Readonly<Record<TravelledStep['name'], string>> = {
  quick: 'A quick',
  larger: 'A slow: the same step, larger',
  slower: 'A slow: the same size, slower',
}

const DYNAMICS: Readonly<Record<Dynamics, string>> = { even: 'Even', swelling: 'Swelling', arrested: 'Arrested' }

const HARDLY = 1e-6

const centimetres = (metres: number): string => `${Math.round(metres * 100)} cm`
const timesAsLong = (ratio: number): string => (Math.abs(ratio - 2) < HARDLY ? 'twice' : `${fraction(ratio)} times`)
const sized = ({ length, beats }: TravelledStep): string => `${centimetres(length)} in ${beatsInWords(beats)}`
const still = ({ still: beats }: TravelledStep): string =>
  beats < HARDLY ? 'no wait' : `stands still ${beatsInWords(beats)}`

/** What is said of the two ways to fill a slow, and of timing and dynamics. */
export const slowWords = {
  title: 'A slow, two ways',
  intro: ({ ratio }: SlowTwoWays): string =>
    `A slow has ${timesAsLong(ratio)} the time of a quick. Two ways fill it: the same step larger, or the same size slower. ` +
    'In neither does the weight wait.',
  /** In which dance, how fast. @param asked the session's dance @param barsPerMinute its tempo at hand */
  where: ({ dance, instead }: SlowTwoWays, asked: Dance, barsPerMinute: number): string => {
    const beat = `${secondsPerBeat(asked, barsPerMinute).toFixed(2)} seconds a beat`
    if (instead === null)
      return `${dance.name} at ${labels.speed(speedOf(dance, barsPerMinute))} of its tempo: ${beat}.`
    const why = {
      'no slows': `${asked.name} is counted in numbers, without slows and quicks.`,
      struck: 'In this figure steps are struck: the weight goes at once and then stands.',
    }[instead]
    return `${why} So this is a free exercise, at the same ${beat}.`
  },
  name: ({ name }: TravelledStep): string => NAMES[name],
  /** "80 cm in 2 beats" */
  sized,
  speed: ({ speed }: TravelledStep): string => `${speed.toFixed(2)} metres a second`,
  ofQuick: ({ name, ofQuick }: TravelledStep): string =>
    `${labels.speed(ofQuick)}${name === 'quick' ? '' : ' of the quick’s speed'}`,
  still,
  /** The picture for those who hear. */
  picture: (step: TravelledStep): string =>
    `${NAMES[step.name]}, seen from above: ${step.feet.to.foot} foot forward ${sized(step)}. ` +
    `${step.beads.length} beads, ${centimetres(step.length / (step.beads.length - 1))} ahead of each other.`,
  foot: { left: 'L', right: 'R' },
  marks:
    'Seen from above; thin: before the step; a line every 20 cm. A bead each half beat, larger on the counts: ' +
    'the further apart, the faster the weight.',
  caution: SLOW_PRACTICE,

  dynamics: 'Timing is not dynamics',
  dynamicsIntro:
    'At every dot the weight is in the same place at the same moment in all three, so all three are in time; ' +
    'how it travels from one to the next is the dancer’s.',
  dynamicsMarks: 'The weight over the beats: up is the right foot, down the left. Thin: the even one.',
  dynamicsName: (kind: Dynamics): string => DYNAMICS[kind],
  dynamicsPicture: (kind: Dynamics, dots: number): string =>
    `${DYNAMICS[kind]}: the weight over the beats, through the same ${dots} dots.`,
} as const
