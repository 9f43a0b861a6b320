import type { CSSProperties } from 'react'
import type { Counting } from '../dance/dance.ts'
import type { Strip, StripGridPoint } from '../scene/strip.ts'
import type { Lesson } from '../session/lesson.ts'
import { countNow } from '../words/countWords.ts'
import { along } from './linePlaces.ts'

/** With more points than this, only what is said aloud is written. */
const DENSE = 26

const kind = ({ onCount, barStart, phraseStart }: StripGridPoint): string =>
  phraseStart ? 'phrase' : barStart ? 'bar' : onCount ? 'count' : 'between'

/** The half-beat grid's lines, from the strip's top through to the slider's foot. */
export function StripGrid({ strip }: { readonly strip: Strip }) {
  return (
    <svg className="strip-grid" aria-hidden="true">
      {strip.grid.map((point) => (
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

type CountsProps = { readonly strip: Strip; readonly lesson: Lesson; readonly counting: Counting }

/** The counts along the grid, in the chosen way. A step that goes on is not named again. */
export function StripCounts({ strip, lesson, counting }: CountsProps) {
  const dense = strip.grid.length > DENSE
  return (
    <div className="strip-counts" style={{ '--points': strip.grid.length } as CSSProperties} aria-hidden="true">
      {strip.grid.map((point) => {
        const { text, called } = countNow(lesson, counting, point.beat)
        const goesOn = !called && (dense || counting === 'slows and quicks')
        return (
          <span
            key={point.beat}
            className={called ? 'strip-count strip-count-called' : 'strip-count'}
            style={{ left: `${along(strip, point.beat)}%` }}
          >
            {goesOn ? (dense ? '·' : betweenCounts(point.beat)) : text}
          </span>
        )
      })}
    </div>
  )
}
