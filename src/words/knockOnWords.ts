import type { Schedule } from '../timing/schedule.ts'
import type { KnockOnAt, Slip, TurningTempo } from '../transfer/knockOn.ts'
import { beatsInWords } from './fraction.ts'

/** Less than this, in beats, is not given a size. */
const HARDLY = 1 / 16
const EIGHTHS = 8

const size = (beats: number): string =>
  beats < HARDLY ? 'less than ⅛ beat' : beatsInWords(Math.round(beats * EIGHTHS) / EIGHTHS)

/** Against rounding in what should be a whole number. */
const NOISE = 1e-6
const downTo = (value: number, parts: number): number => Math.floor(value * parts + NOISE) / parts
const upTo = (value: number, parts: number): number => Math.ceil(value * parts - NOISE) / parts

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`

/** "step 3", "steps 1 and 2", "steps 1 to 8". @param first, last by index */
function steps(first: number, last: number): string {
  if (first === last) return `step ${first + 1}`
  return `steps ${first + 1} ${last === first + 1 ? 'and' : 'to'} ${last + 1}`
}

/** Beats in whole ones, bars in tenths; tenths of beats where whole ones would not tell two tempi apart. */
type Digits = 1 | 10

/** "(17.8 bars)". Tempi after "up to" are cut, not rounded, so that what is said still holds at them. */
const bars = (beats: number, perBar: number): string => `(${counted(downTo(beats / perBar, 10), 'bar')})`
const aMinute = (beats: number, digits: Digits): string => `${counted(downTo(beats, digits), 'beat')} a minute`

const sentence = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`

/** What is said of one slip and of what follows from it. */
export const knockOnWords = {
  /**
   * "Up to 71 beats a minute (17.8 bars) the step itself makes up for it; up to 214 (53.5 bars), step 5 at the latest; faster,
   * every step to the end stays late." Which step it is that slips is said elsewhere.
   */
  turning: ({ actions, beatsPerBar }: Schedule, { at }: Slip, { itself, inFigure, tempi }: TurningTempo): string => {
    const everyTempo =
      `from ${upTo(tempi.from, 1)} to ${counted(downTo(tempi.to, 1), 'beat')} a minute ` +
      `(${upTo(tempi.from / beatsPerBar, 10)} to ${counted(downTo(tempi.to / beatsPerBar, 10), 'bar')})`
    const stays = at === actions.length - 1 ? 'it stays late' : 'every step to the end stays late'
    if (itself.made === 'at every tempo') return sentence(`${everyTempo} the step itself makes up for it`)
    if (inFigure.made === 'at no tempo') return sentence(`${everyTempo} ${stays}`)
    const latest = `step ${inFigure.by + 1}`
    if (itself.made === 'at no tempo') {
      return inFigure.made === 'at every tempo'
        ? sentence(`${everyTempo} ${latest} at the latest makes up for it`)
        : sentence(
            `up to ${aMinute(inFigure.beatsPerMinute, 1)} ${bars(inFigure.beatsPerMinute, beatsPerBar)} ${latest} at the latest makes up for it; faster, ${stays}`,
          )
    }
    const slow = itself.beatsPerMinute
    const quick = inFigure.made === 'up to' ? inFigure.beatsPerMinute : tempi.to
    const digits = inFigure.by !== at && downTo(slow, 1) === downTo(quick, 1) ? 10 : 1
    return sentence(
      [
        `up to ${aMinute(slow, digits)} ${bars(slow, beatsPerBar)} the step itself makes up for it`,
        ...(inFigure.by === at
          ? []
          : [`up to ${downTo(quick, digits)} ${bars(quick, beatsPerBar)}, ${latest} at the latest`]),
        ...(inFigure.made === 'up to' ? [`faster, ${stays}`] : []),
      ].join('; '),
    )
  },

  /** At the tempo at hand: "At 200 beats a minute (50 bars): steps 1 to 8 late, ½ beat each." */
  now: ({ beatsPerBar }: Schedule, { at, by }: Slip, { beatsPerMinute, late }: KnockOnAt): string => {
    const rounded = (value: number): number => Math.round(value * 10) / 10
    const told = (text: string): string =>
      `At ${counted(rounded(beatsPerMinute), 'beat')} a minute (${counted(rounded(beatsPerMinute / beatsPerBar), 'bar')}): ${text}.`
    const first = late[0] ?? 0
    const end = late.indexOf(0)
    if (by === 0) return told('every step in time')
    if (end === 0) return told(`step ${at + 1} begins ${size(by)} late and is in time at its end`)
    if (end > 0) return told(`late on ${steps(at, at + end - 1)}, then in time`)
    const whole = steps(at, at + late.length - 1)
    const [most, least] = [size(first), size(late.at(-1) ?? 0)]
    if (late.length === 1) return told(`${whole} late by ${most}`)
    return told(`${whole} late, ${most === least ? `${most} each` : `from ${most} down to ${least}`}`)
  },
} as const
