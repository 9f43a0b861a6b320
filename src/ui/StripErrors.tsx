import type { Tone } from '../scene/panelPicture.ts'
import type { Strip, StripLine, StripMoment } from '../scene/strip.ts'
import { along } from './linePlaces.ts'

/** Less than this, in beats, is not seen. */
const SEEN = 1 / 32
/** Distance of the first row of bars from its level, and of the rows from each other, in px. */
const FIRST = 5
const APART = 4.5

type Props = {
  readonly strip: Strip
  readonly toneOf: (panel: number) => Tone
  /** Per cent from the top. @param right the weight's place, 0 left to 1 right */
  readonly levelOf: (right: number) => number
}

const isOff = ({ by }: StripMoment): boolean => Math.abs(by) >= SEEN

/** The fulls that are off; a split only where its full is in time again, for it says the same. */
const shown = (moments: readonly StripMoment[]): StripMoment[] =>
  moments.filter(
    (moment) =>
      isOff(moment) &&
      (moment.moment === 'full' ||
        !moments.some((other) => other.index === moment.index && other.moment === 'full' && isOff(other))),
  )

/** Over the right foot bars lie above the level, over the left below it, and what is between the feet is at its own. */
const offset = ({ moment, right }: StripMoment, row: number): number => {
  const away = FIRST + row * APART
  return moment === 'split' ? (row - 1) * APART : right > 0.5 ? -away : away
}

/** Of every moment that is off: a bar from where it should be to where it was. A row for each performance. */
export function StripErrors({ strip, toneOf, levelOf }: Props) {
  const lines = strip.lines.filter(({ moments }) => moments.some(isOff))
  return (
    <g>
      {lines.flatMap(({ panel, moments }, row) =>
        shown(moments).map((moment) => {
          const [from, to] = [along(strip, moment.planned), along(strip, moment.danced)]
          const y = `${levelOf(moment.right)}%`
          const shift = `translate(0 ${offset(moment, row)})`
          return (
            <g
              key={`${panel} ${moment.index} ${moment.moment}`}
              className={`strip-error strip-error-${moment.moment}`}
              data-tone={toneOf(panel)}
              transform={shift}
            >
              <line className="line" x1={`${from}%`} x2={`${to}%`} y1={y} y2={y} />
              <circle cx={`${from}%`} cy={y} r="1.8" />
            </g>
          )
        }),
      )}
    </g>
  )
}

/** Where a performance hurries: two points of an arrow on its line. */
export function StripRushes({
  strip,
  line,
  tone,
  y,
}: {
  readonly strip: Strip
  readonly line: StripLine
  readonly tone: Tone
  readonly y: (t: number) => number
}) {
  return line.rushes.map(({ from, to }) => {
    const t = (from + to) / 2
    return (
      <text
        key={from}
        className="strip-rush"
        data-tone={tone}
        x={`${along(strip, t)}%`}
        y={`${y(t)}%`}
        dominantBaseline="central"
        textAnchor="middle"
      >
        »
      </text>
    )
  })
}
