import type { Fault, FaultKind } from '../transfer/faults.ts'
import { beatsInWords, fraction } from './fraction.ts'
import { partOf } from './partOf.ts'
import { provenanceWords } from './provenanceWords.ts'

type Said = {
  /** What is seen of it. */
  readonly seen: string
  /** What usually helps. */
  readonly remedy: string
  /** Why it cannot be made in a figure. */
  readonly notHere: string
}

const STEP_NEEDED = 'There is no step in this figure that takes the weight.'
const SPLIT_NEEDED = 'No beat is split in this figure.'

/** Facts by the sources of `faults`; the wording is ours. */
const SAID: Readonly<Record<FaultKind, Said>> = {
  late: {
    seen: 'Everything comes after its beat, at its usual pace.',
    remedy: 'Begin to prepare half a beat sooner: the standing leg sends the body before the count.',
    notHere: STEP_NEEDED,
  },
  hurrying: {
    seen: 'The step begins late and is hurried, and where there is time the end is right again.',
    remedy: 'Leave the old foot in time; the hurry then goes by itself.',
    notHere: STEP_NEEDED,
  },
  early: {
    seen: 'A step, then a dead wait: the weight falls onto the foot and stands there.',
    remedy: 'Spread the way over the whole of the step’s time. Say the slow as long as it is.',
    notHere: STEP_NEEDED,
  },
  ahead: {
    seen: 'The next step is taken before its beat.',
    remedy: 'Count aloud, with slower music, and let the beat come before you go.',
    notHere: STEP_NEEDED,
  },
  gaining: {
    seen: 'Each step is a little too short, so the dancer is farther ahead with every one.',
    remedy: 'Stop at the end of a phrase and listen. Clap the plain beats, then walk them.',
    notHere: STEP_NEEDED,
  },
  'foot first': {
    seen: 'The foot is down in time and the body is not on it: it follows later.',
    remedy: 'Take the body along from the standing foot; the foot only receives it.',
    notHere: STEP_NEEDED,
  },
  placed: {
    seen: 'On a step of half a beat the foot is on its count and the weight is not: the next steps are late.',
    remedy:
      'Smaller steps, the body over each foot at once. Slowly the steps after it have time to make up for it, so there is one thing left to mend.',
    notHere: 'No step of this figure has half a beat.',
  },
  'cut short': {
    seen: 'The slow is as short as a quick, and at the end there is time left over.',
    remedy: 'Speak it: the slow takes two beats to say. Walk slows alone, then put the quicks back.',
    notHere: 'There is no slow in this figure.',
  },
  misplaced: {
    seen: 'The two short steps come on another beat than theirs.',
    remedy: 'Clap the rhythm without steps first, then walk it in place.',
    notHere: 'No beat is split in this figure beside a whole one.',
  },
  evened: {
    seen: 'Short and long steps become alike: the rhythm is gone, the sum is right.',
    remedy: 'Clap it against a steady beat; make the short ones short before the long ones long.',
    notHere: `${SPLIT_NEEDED} Nothing can be evened out.`,
  },
  'no change': {
    seen: 'The feet close and the weight stays where it was: the wrong foot is free for the next step.',
    remedy: 'After each close lift the foot that should be free. If it does not lift, the weight has not changed.',
    notHere: 'No step of this figure closes and takes the weight.',
  },
  stops: {
    seen: 'The weight stands between the feet and then has to hurry.',
    remedy: 'Keep the standing knee at work until the weight is over the new foot.',
    notHere: STEP_NEEDED,
  },
  'part weight': {
    seen: 'The old foot never comes free: a part of the weight stays on it.',
    remedy: 'Pause on each step and lift the free foot. Smaller steps.',
    notHere: 'No step of this figure takes all of the weight.',
  },
  slip: {
    seen: 'One step begins late. What follows shows how many others it makes late.',
    remedy: 'Practise slowly, where each step has time to spare, and bring the tempo up bit by bit.',
    notHere: STEP_NEEDED,
  },
  swelling: {
    seen: 'Between the same moments the weight starts softly and grows quicker. It is in time.',
    remedy: 'No mistake: how the weight goes from moment to moment is the dance’s character.',
    notHere: STEP_NEEDED,
  },
  arrested: {
    seen: 'Between the same moments the weight goes sharply and then hardly moves. It is in time.',
    remedy: 'No mistake: how the weight goes from moment to moment is the dance’s character.',
    notHere: STEP_NEEDED,
  },
}

const GROUPS: Readonly<Record<Fault['of'], string>> = {
  timing: 'Timing',
  weight: 'Weight',
  rhythm: 'Rhythm',
  dynamics: 'No mistakes: other dynamics, the same timing',
}

/** How much of a fault, as it stands in a list. */
function amountText(kind: FaultKind, amount: number): string {
  switch (kind) {
    case 'early':
      return `in ${partOf(amount)} the time`
    case 'part weight':
      return `${fraction(amount)} of the weight`
    case 'gaining':
      return `${beatsInWords(amount)} each step`
    default:
      return amount === 0 ? 'nothing' : beatsInWords(amount)
  }
}

/** What is said of mistakes and of choosing them. */
export const faultWords = {
  title: (place: number) => `Picture ${place + 1}: what goes wrong`,
  pictures: 'Pictures',
  more: 'Add a picture',
  less: (name: string) => `Take away: ${name}`,
  plan: 'This is the plan: what the other pictures are held against. Choose one of those, or add one.',
  group: (of: Fault['of']) => GROUPS[of],
  seen: (kind: FaultKind) => SAID[kind].seen,
  remedy: (kind: FaultKind) => `Usual help: ${SAID[kind].remedy}`,
  notHere: (kind: FaultKind) => SAID[kind].notHere,
  source: ({ source }: Fault) =>
    source.text === '' ? `${provenanceWords(source)}.` : `${provenanceWords(source)}: ${source.text}.`,
  amount: 'How much',
  amountText,
  steps: { chosen: 'On which steps', one: 'On which step' },
  allSteps: 'All',
  step: (index: number, sign: string) => `${index + 1}: ${sign}`,
  demo: (title: string) => `See it in: ${title}`,
  shortest: 'The dancer carries the weight across in',
  shortestText: (seconds: number) => `${seconds} s${seconds < 0.3 ? ', at the least' : ', comfortably'}`,
  teacher: 'Usual advice. Your teacher has the last word; when something hurts, stop.',
} as const
