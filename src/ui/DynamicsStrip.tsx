import type { DynamicsStrips } from '../scene/dynamicsStrips.ts'
import { slowWords } from '../words/slowWords.ts'
import { along, BOX, linePath, rightAt } from './linePlaces.ts'

type Props = {
  readonly strips: DynamicsStrips
  readonly line: DynamicsStrips['lines'][number]
  /** What the others are held against. */
  readonly even: DynamicsStrips['lines'][number]
}

/** One line of the weight over the beats, with its checkpoints as dots and the even line behind it. */
export function DynamicsStrip({ strips, line, even }: Props) {
  return (
    <svg className="dynamics-picture" role="img" aria-label={slowWords.dynamicsPicture(line.kind, line.dots.length)}>
      {strips.counts.map(({ at }) => (
        <line
          key={at}
          className="dynamics-count"
          x1={`${along(strips, at)}%`}
          x2={`${along(strips, at)}%`}
          y1="0"
          y2="100%"
        />
      ))}
      <svg
        width="100%"
        height="100%"
        viewBox={`0 0 ${BOX.width} ${BOX.height}`}
        preserveAspectRatio="none"
        overflow="visible"
        aria-hidden="true"
      >
        {line === even ? null : <path className="dynamics-even" d={linePath(strips, even)} />}
        <path className="dynamics-line" d={linePath(strips, line)} />
      </svg>
      {line.dots.map(({ t }) => (
        <circle
          key={t}
          className="dynamics-dot"
          cx={`${along(strips, t)}%`}
          cy={`${(1 - rightAt(line, t)) * 100}%`}
          r="4.5"
        />
      ))}
    </svg>
  )
}
