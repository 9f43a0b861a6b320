import { SOLE_MIDDLE_Y } from '../scene/footprint.ts'
import { type FootShape, footShape } from '../scene/footShape.ts'
import type { TravelledStep } from '../scene/slowTwoWays.ts'
import { slowWords } from '../words/slowWords.ts'

/** The picture's unit is a millimetre of the floor: letters and lines have sizes that every browser can draw. */
const MM = 1000
/** Around the feet, mm. */
const MARGIN = 40
/** So that the steps end on a line. */
const FLOOR_LINE = 200
/** The picture may be wider than the floor that must be seen. */
const FAR = 5000
const BEAD = { onCount: 24, between: 16 } as const
/** Of a letter's line, mm: its figures stand around its middle. */
const LETTER_DOWN = 22
/** The weight's way begins in the middle of its foot and goes ahead: that foot's letter stands on the heel, in foot lengths. */
const HEEL_MIDDLE_Y = -0.35

const mm = (metres: number): number => Math.round(metres * MM)
const pointsOf = (flat: readonly number[]): string =>
  flat.map((value, k) => (k % 2 === 0 ? mm(value) : -mm(value))).join(' ')

type Feet = TravelledStep['feet']

const shapes = ({ feet, footLength }: TravelledStep): readonly (readonly [keyof Feet, FootShape])[] =>
  (['from', 'standing', 'to'] as const).map((name) => [name, footShape(feet[name].foot, feet[name], footLength)])

/** Floor that holds all of the steps, mm: their pictures have one scale. */
export function floorOf(steps: readonly TravelledStep[]): { x: number; y: number; width: number; height: number } {
  const flat = steps.flatMap((step) => shapes(step).flatMap(([, { outline }]) => outline))
  const [xs, ys] = [flat.filter((_, k) => k % 2 === 0).map(mm), flat.filter((_, k) => k % 2 === 1).map((y) => -mm(y))]
  const [x, y] = [Math.min(...xs) - MARGIN, Math.min(...ys) - MARGIN]
  return { x, y, width: Math.max(...xs) + MARGIN - x, height: Math.max(...ys) + MARGIN - y }
}

type Props = { readonly step: TravelledStep; readonly floor: ReturnType<typeof floorOf> }

/** A step seen from above: where the feet stand before and after, and the weight at each half beat. */
export function StepPicture({ step, floor: { x, y, width, height } }: Props) {
  const { feet, footLength, path, beads } = step
  const first = Math.ceil(y / FLOOR_LINE)
  const lines = Array.from({ length: Math.floor((y + height) / FLOOR_LINE) - first + 1 }, (_, k) => first + k)
  return (
    <svg
      className="step-picture"
      viewBox={`${x} ${y} ${width} ${height}`}
      role="img"
      aria-label={slowWords.picture(step)}
    >
      {lines.map((k) => (
        <line key={k} className="step-floor" x1={-FAR} x2={FAR} y1={k * FLOOR_LINE} y2={k * FLOOR_LINE} />
      ))}
      {shapes(step).map(([name, { outline, heel }]) => (
        <g key={name} className={`step-foot step-${name}`}>
          <polygon points={pointsOf(outline)} />
          <polyline points={pointsOf(heel)} />
          <text
            x={mm(feet[name].x)}
            y={LETTER_DOWN - mm(feet[name].y + (name === 'standing' ? HEEL_MIDDLE_Y : SOLE_MIDDLE_Y) * footLength)}
          >
            {slowWords.foot[feet[name].foot]}
          </text>
        </g>
      ))}
      <polyline className="step-way" points={pointsOf(path.flatMap((point) => [point.x, point.y]))} />
      {beads.map((bead) => (
        <circle
          key={bead.y}
          className="step-bead"
          cx={mm(bead.x)}
          cy={-mm(bead.y)}
          r={bead.onCount ? BEAD.onCount : BEAD.between}
        />
      ))}
    </svg>
  )
}
