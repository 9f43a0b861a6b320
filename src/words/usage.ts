import { faultOf } from '../transfer/faults.ts'
import type { WayKind } from '../transfer/way.ts'
import { performanceKinds } from './performanceKinds.ts'
import { plainFraction } from './plainFraction.ts'

const STEPS = { chosen: 'any', one: 'one', all: '' } as const

/** What can be set of a performance: "  late         0 to 1 beat, usually 1/2         any". */
function kindLine(word: string, kind: WayKind): string {
  if (kind === 'in time') return `  ${word}\n`
  const { amount, on } = faultOf(kind)
  const unit = amount?.key === 'by' ? 'beat' : kind === 'early' ? 'of the step’s time' : 'of the weight'
  const [from, to, usual] = amount === null ? [] : [amount.from, amount.to, amount.usual].map(plainFraction)
  const much = amount === null ? '' : `${from} to ${to} ${unit}, usually ${usual}`
  return `  ${word.padEnd(13)}${much.padEnd(43)}${STEPS[on]}`.trimEnd().concat('\n')
}

const KINDS = [...performanceKinds].map(([word, kind]) => kindLine(word, kind)).join('')

/** How the command line is called; ends with a line break. */
export const usage = `npm run --silent figure -- check FILES…
  Checks figure files: a line for each problem, with file, line and column.
npm run --silent figure -- chart FILE [--as table|csv|json] [--performance KIND] [--every 1/2|1/4|1/8]
  Charts a figure: where feet and weight are at every half beat.
npm run --silent figure -- measure FILE [--as table|csv|json] [--performance KIND|all]
  Measures a performance against the plan: a sentence, the error of each moment, waits and rushes, smoothness.
Both take [--amount 1/2] [--late 1/2] [--early-part 1/2] [--steps 2,3] [--tempo 29] [--shortest 0.42] [--timing 1]
  ${'KIND'.padEnd(13)}${'--amount'.padEnd(43)}--steps
${KINDS}Ends with 0 when all is well, 1 when a figure has errors, 2 when the call is wrong or a file cannot be read.
`
