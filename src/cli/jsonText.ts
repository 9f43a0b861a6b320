import type { Schedule } from '../timing/schedule.ts'
import type { Way } from '../transfer/way.ts'
import { wayName } from '../words/wayName.ts'
import { DECIMALS, rounded } from './rounded.ts'

const numbersRounded = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? rounded(value, DECIMALS) : value

/** What JSON lets stand in a text and a terminal would obey: written as JSON's own escapes. */
const escaped = (json: string): string =>
  json.replace(/[\x7f-\x9f\p{Cf}\p{Zl}\p{Zp}]/gu, (sign) =>
    sign.replace(/[\s\S]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`),
  )

/** A record as JSON with rounded numbers, safe to show; ends with a line break. */
export const jsonText = (record: object): string => `${escaped(JSON.stringify(record, numbersRounded, 2))}\n`

/** What a record says of its figure. */
export const figureRecord = ({ figure, timing }: Schedule): object => {
  const { id, title, dance, role } = figure
  return { id, title, dance, role, timing: timing.text }
}

/** What a record says of a way of dancing; chosen steps by their numbers from 1. */
export function wayRecord(way: Way): object {
  const { on, ...rest }: Way & { readonly on?: readonly number[] } = way
  return { ...rest, ...(on === undefined ? {} : { steps: on.map((index) => index + 1) }), name: wayName(way) }
}
