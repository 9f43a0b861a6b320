import type { CSSProperties } from 'react'
import type { Counting } from '../dance/dance.ts'
import type { Strip, StripGridPoint } from '../scene/strip.ts'
import type { Lesson } from '../session/lesson.ts'
import { musicPlace } from '../timing/counts.ts'
import { countNow } from '../words/countWords.ts'
import { along } from './linePlaces.ts'
import { type StripWords, stripWords } from './stripWords.ts'

const kind = ({ onCount, barStart, phraseStart }: StripGridPoint): string =>
  phraseStart ? 'phrase' : barStart ? 'bar' : onCount ? 'count' : 'between'

type GridProps = { readonly strip: Strip; readonly counts: StripWords }

/** The half-beat grid's lines, from the strip's top through to the slider's foot; as many as can be told apart. */
export function StripGrid({ strip, counts }: GridProps) {
  return (
    <svg className="strip-grid" aria-hidden="true">
      {strip.grid
        .filter(({ beat }) => counts.lines.includes(beat))
        .map((point) => (
          <line
            key={point.beat}
            className={`grid-${kind(point)}`}
            x1={`${along(strip, point.beat)}%`}
            x2={`${along(strip, point.beat)}%`}
            y1="0"
            y2="100%"
          />
        ))}
    </svg>
  )
}

/** Between the names of steps: the & of every beat, and a dot for a beat that a slow goes on through. */
const betweenCounts = (beat: number): string => (Math.abs((beat * 2) % 2) === 1 ? '&' : '·')

/**
 * The counts along the grid, in the chosen way. A step that goes on is not named again.
 * @param width of the strip, rem
 */
export function countsOf(strip: Strip, lesson: Lesson, counting: Counting, width: number): StripWords {
  const points = strip.grid.map(({ beat, onCount, barStart }) => {
    const { text, called } = countNow(lesson, counting, beat)
    const goesOn = !called && counting === 'slows and quicks'
    const { bar } = musicPlace(lesson.schedule, beat)
    return { beat, onCount, barStart, bar, called, text: goesOn ? betweenCounts(beat) : text }
  })
  return stripWords(points, width / (strip.to - strip.from))
}

export function StripCounts({ strip, counts }: GridProps) {
  return (
    <div className="strip-counts" style={{ '--size': counts.size } as CSSProperties} aria-hidden="true">
      {counts.words.map(({ beat, text, called }) => (
        <span
          key={beat}
          className={called ? 'strip-count strip-count-called' : 'strip-count'}
          style={{ left: `${along(strip, beat)}%` }}
        >
          {text}
        </span>
      ))}
    </div>
  )
}
