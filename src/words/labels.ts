import type { Counting, Dance, Source } from '../dance/dance.ts'
import { defaultTempo } from '../dance/defaultTempo.ts'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import { speedOf } from '../dance/speed.ts'
import type { Figure } from '../figure/figure.ts'
import type { WayKind } from '../transfer/way.ts'
import { toBeat } from '../units.ts'
import { fraction } from './fraction.ts'
import { provenanceWords } from './provenanceWords.ts'
import { shownLine } from './shownLine.ts'

/** At most `digits` decimals, no zeros at the end. */
const number = (value: number, digits: number): string => String(Number(value.toFixed(digits)))

const COUNTINGS: Readonly<Record<Counting, string>> = {
  'slows and quicks': 'Slows and quicks',
  'bars and beats': 'Bars and beats',
  'half beats': 'Half beats',
}

const stepLength = (grid: number): string => (grid === 0.25 ? 'A quarter beat' : 'Half a beat')

/** Every text of the interface that does not follow from the beat. Sentences about a moment have files of their own. */
export const labels = {
  program: 'Overfoot',
  figure: 'Figure',
  /** "Three walks (1 bar)": in the list, where one looks for a longer or a shorter one. */
  figureTitle: ({ title, timings }: Figure, { beatsPerBar }: Pick<Dance, 'beatsPerBar'>) => {
    const beats = (timings[0]?.values ?? []).reduce((sum, value) => sum + toBeat(value), 0)
    const bars = beats / beatsPerBar
    return `${shownLine(title)} (${fraction(bars)} ${bars > 1 ? 'bars' : 'bar'})`
  },
  figureAbout: ({ about }: Figure) => shownLine(about),
  /** "Foxtrot, leader." */
  figureFacts: ({ name }: Dance, { role }: Figure) => `${name}, ${role}.`,

  /** What is asked of pictures without names; null: of a single one there is nothing to ask. */
  ask: (shown: readonly WayKind[]) =>
    shown.length < 2
      ? null
      : shown.includes('late')
        ? 'Who is late?'
        : shown.includes('early')
          ? 'Who is early?'
          : 'Who is right?',
  showNames: 'Show names',
  /** Names off: pupils answer by number. @param place 0 = the leftmost */
  unnamedPanel: (place: number) => `${place + 1}`,
  unnamedPanelSpoken: (place: number) => `Picture ${place + 1}`,
  chooseWay: 'What goes wrong: choose what this picture shows',
  enlarge: (name: string) => `Show large: ${name}`,

  picture: (figure: Figure, names: readonly string[]) =>
    `${shownLine(figure.title)}, seen from above: two feet and the weight, in ${names.length} pictures. ${names.join('. ')}.`,
  unnamedPicture: (figure: Figure, panels: number) =>
    `${shownLine(figure.title)}, seen from above: two feet and the weight, in ${panels} pictures without names.`,
  pictureFailed: 'This browser cannot draw the picture. The words, the count and the strip work without it.',

  countNow: 'Count now',
  conventionNow: 'Where the weight is on this count',

  strip: 'The weight over the beats: up is the right foot, down the left',
  /** The strip's two levels; on a narrow screen without "foot". */
  feet: { right: 'right', left: 'left', foot: 'foot' },
  beat: 'Beat',
  /** What a screen reader says of the beat: the count, then what the weight does in each picture. */
  beatValue: (count: string, panels: readonly { readonly name: string; readonly stage: string }[]) =>
    [count, ...panels.map(({ name, stage }) => `${name}: ${stage}`)].join('. '),

  transport: 'Playing',
  play: 'Play',
  pause: 'Pause',
  stepBack: (grid: number) => `${stepLength(grid)} back`,
  stepForward: (grid: number) => `${stepLength(grid)} forward`,
  stepSign: (grid: number) => fraction(grid),
  loop: 'Loop the whole figure',
  loopShort: 'Figure',

  settings: 'Settings',
  tempo: 'Tempo',
  barsPerMinute: (bars: number): string => `${number(bars, 1)} bars a minute`,
  /** "80 %: 93 beats a minute, 0.65 seconds a beat. 100 % = 29 bars a minute; danced at 28 to 30 (published)." */
  tempoFacts: (bars: number, dance: Dance) => {
    const { barsPerMinute, source } = defaultTempo(dance)
    const { from, to } = dance.tempo
    const danced = from === to ? '' : `; danced at ${number(from, 1)} to ${number(to, 1)}`
    return (
      `${bars === barsPerMinute ? '' : `${labels.speed(speedOf(dance, bars))}: `}${number(bars * dance.beatsPerBar, 1)} beats a minute, ` +
      `${secondsPerBeat(dance, bars).toFixed(2)} seconds a beat. ` +
      `100 % = ${labels.barsPerMinute(barsPerMinute)}${danced} (${provenanceWords(source)}).`
    )
  },
  speed: (speed: number): string => `${number(speed * 100, 0)} %`,
  tempoAndSpeed: (tempo: string, speed: number): string => `${tempo}, ${labels.speed(speed).replace(' ', '\u00a0')}`,
  speedStep: (by: number): string => `${Math.round(Math.abs(by) * 100)} % ${by < 0 ? 'slower' : 'faster'}`,
  speedSpoken: (speed: number, dance: Dance) =>
    `${labels.speed(speed)}: ${labels.barsPerMinute(speed * defaultTempo(dance).barsPerMinute)}`,
  counting: 'Counting',
  countingName: (counting: Counting) => COUNTINGS[counting],
  noSlows: ({ name }: Dance) => `${COUNTINGS['slows and quicks']} (${name}: numbers only)`,

  notes: 'Notes and cautions',
  close: 'Close',
  cautionsTitle: 'Before you dance',
  cautions: [
    'Clear the floor: dry, even, nothing to trip over, and room to other couples.',
    'Warm up first, cool down after, drink, rest, and build up slowly.',
    'Wear shoes that suit the floor. On a slick floor: smaller steps, softer knees.',
    'Do not watch a screen while you travel: look, put it away, then dance.',
    'Stop when something hurts. With pain, in pregnancy, with heart or balance trouble, ask a doctor or physiotherapist.',
    'This is usual advice, and the picture shows timing only. In technique your teacher has the last word.',
  ],
  thisFigure: 'This figure',
  timingText: ({ text }: Figure['timings'][number]) => shownLine(text),
  timingSource: ({ text, source }: Figure['timings'][number]) => `Timing ${shownLine(text)}: ${sourced(source)}.`,
  tempoSource: (dance: Dance) => {
    const { from, to, source } = dance.tempo
    const range = from === to ? `${from}` : `${from} to ${to}`
    return `Tempo ${range} bars a minute (${sourced(source)}). 100 % is its middle, our own choice.`
  },
  conventionSource: (figure: Figure, dance: Dance) =>
    figure.convention === dance.convention
      ? `Weight: ${figure.convention} (${sourced(dance.conventionSource)}).`
      : `Weight: ${figure.convention}, set for this figure.`,
  failureTitle: 'Something went wrong',
  failureText: 'The program could not go on. This is what it said:',
  failureUnknown: 'no reason was given',
  startWithout: 'Start without this figure',
  saveMine: 'Download my figure',
  reload: 'Reload the page',
  notLoaded: 'The page could not be loaded whole: the picture is here, the buttons are not.',
} as const

/** "published: a text" or "common practice". */
function sourced(source: Source): string {
  return source.text === '' ? provenanceWords(source) : `${source.provenance}: ${shownLine(source.text)}`
}
