import type { Tone } from '../scene/panelPicture.ts'

const SHAPES = {
  'in time': <circle cx="31" cy="9" r="7" />,
  late: <rect x="24.5" y="2.5" width="13" height="13" />,
  early: <path d="M31 0.5 39.5 9 31 17.5 22.5 9z" />,
  other: <path d="M31 0.5 40.5 16.5 21.5 16.5z" />,
  plain: <circle cx="31" cy="9" r="7" />,
} as const

/** A performance's sign: the shape of its weight in the picture on the stroke of its line in the strip. */
export function ToneMark({ tone }: { readonly tone: Tone }) {
  return (
    <svg className="tone-mark" data-tone={tone} viewBox="0 0 62 18" aria-hidden="true" focusable="false">
      <line className="line" x1="1" x2="61" y1="9" y2="9" />
      {SHAPES[tone]}
    </svg>
  )
}
