import type { Strip } from '../scene/strip.ts'
import { tones } from '../scene/tones.ts'
import type { Lesson } from '../session/lesson.ts'
import { labels } from '../words/labels.ts'
import { numbered } from '../words/numbered.ts'
import { wayLine } from '../words/wayName.ts'
import { clearPlaces, NAME_GAP } from './clearPlaces.ts'
import { along, BOX, linePath, rightAt } from './linePlaces.ts'
import { StripErrors, StripRushes } from './StripErrors.tsx'
import type { StripRoom } from './useStripRoom.ts'

/** Where the feet's levels lie, per cent from the top. */
const TOP = 13
const BOTTOM = 87
/** Per cent from the top. @param right where the weight is, 0 = left foot, 1 = right */
export const levelOf = (right: number): number => level((1 - right) * 100)
const level = (part: number): number => TOP + (part / 100) * (BOTTOM - TOP)
/** Where a beat is narrower than this, in rem, lines are thin and rushes have no sign: it would lie on the next one. */
const DENSE = 1

type Props = { readonly strip: Strip; readonly lesson: Lesson; readonly names: boolean; readonly room: StripRoom }

/** The weight over the beats: one line a performance, between the right foot (up) and the left (down). */
export function StripPicture({ strip, lesson, names, room }: Props) {
  const kinds = lesson.panels.map(({ way }) => way.kind)
  const toned = tones(kinds)
  const lineNames = numbered(kinds.map(wayLine))
  const toneOf = (panel: number) => toned[panel] ?? 'in time'
  const isDense = room.width / (strip.to - strip.from) < DENSE
  return (
    <svg className={isDense ? 'strip-picture strip-dense' : 'strip-picture'} role="img" aria-label={labels.strip}>
      <line className="strip-level" x1="0" x2="100%" y1={`${TOP}%`} y2={`${TOP}%`} />
      <line className="strip-level" x1="0" x2="100%" y1={`${BOTTOM}%`} y2={`${BOTTOM}%`} />
      <svg
        x="0"
        y={`${TOP}%`}
        width="100%"
        height={`${BOTTOM - TOP}%`}
        viewBox={`0 0 ${BOX.width} ${BOX.height}`}
        preserveAspectRatio="none"
        overflow="visible"
        aria-hidden="true"
      >
        {names
          ? strip.lines.flatMap((line) =>
              line.waits.map(({ from, to }) => {
                const y = (1 - rightAt(line, (from + to) / 2)) * BOX.height
                const [start, end] = [along(strip, from), along(strip, to)].map((part) => (part / 100) * BOX.width)
                return (
                  <line
                    key={`${line.panel} ${from}`}
                    className="strip-wait"
                    data-tone={toneOf(line.panel)}
                    x1={start}
                    x2={end}
                    y1={y}
                    y2={y}
                  />
                )
              }),
            )
          : null}
        {strip.lines.map((line) => (
          <path
            key={line.panel}
            className="strip-line line"
            data-tone={names ? toneOf(line.panel) : 'plain'}
            d={linePath(strip, line)}
          />
        ))}
      </svg>
      {names ? <StripErrors strip={strip} toneOf={toneOf} levelOf={levelOf} /> : null}
      {names && !isDense
        ? strip.lines.map((line) => (
            <StripRushes
              key={line.panel}
              strip={strip}
              line={line}
              tone={toneOf(line.panel)}
              y={(t) => levelOf(rightAt(line, t))}
            />
          ))
        : null}
      {names
        ? clearPlaces(strip, (panel) => lineNames[panel] ?? '', room, levelOf).map(({ panel, x, y, side }) => (
            <text
              key={panel}
              className="strip-name"
              data-tone={toneOf(panel)}
              x={`${x}%`}
              y={`${level(y)}%`}
              dx={`${side === 'after' ? NAME_GAP : -NAME_GAP}em`}
              dominantBaseline="middle"
              textAnchor={side === 'after' ? 'start' : 'end'}
            >
              {lineNames[panel]}
            </text>
          ))
        : null}
    </svg>
  )
}
