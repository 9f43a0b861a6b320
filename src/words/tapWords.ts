import type { Dance } from '../dance/dance.ts'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import { fraction } from './fraction.ts'

/** Taps before anything is said: as in `clock/tapTempo.ts`. */
const FEWEST = 3

const PERHAPS_TWICE = 'If you tapped every other beat: twice as fast.'

/** At most one decimal, no zero at the end. */
const rounded = (value: number): string => String(Number(value.toFixed(1)))
const many = (value: number, one: string): string => `${rounded(value)} ${one}${rounded(value) === '1' ? '' : 's'}`

/** What is said of tapping a tempo, and of playing along with real music. */
export const tapWords = {
  title: 'With your own music',
  /** The same where there is little room. */
  tab: 'Own music',
  tap: 'Tap',
  tapHint: 'Tap on each beat of the music; the first tap is the one',
  intro:
    'Tap on each beat of the music, beginning on a 1. Your last taps set the tempo; after 3 seconds without a tap it begins anew.',

  /** What is still wanted, or why there is no tempo yet. @param taps so far in this run */
  waiting: (taps: number): string => {
    if (taps === 0) return `Tap ${FEWEST} times or more.`
    return taps < FEWEST ? `${many(FEWEST - taps, 'more tap')}.` : 'Too uneven so far: go on tapping.'
  },
  /** "116 beats a minute: 29 bars." and where that cannot be played, what is. */
  tempo: ({ beatsPerMinute }: { readonly beatsPerMinute: number }, dance: Dance): string => {
    const bars = beatsPerMinute / dance.beatsPerBar
    const said = `${many(beatsPerMinute, 'beat')} a minute: ${many(bars, 'bar')}.`
    const { from, to } = playedTempoRange(dance)
    if (bars >= from && bars <= to) return said
    const nearest = bars < from ? from : to
    return `${said} ${dance.name} is played here at ${rounded(from)} to ${many(to, 'bar')}, so it is set to ${rounded(nearest)}.`
  },
  /** Every other beat was tapped, or every half: which tempo of the dance that would be; '' where the tempo is one of its own. */
  perhaps: ({ beatsPerMinute }: { readonly beatsPerMinute: number }, { tempo, beatsPerBar }: Dance): string => {
    const fits = (times: number): boolean => {
      const bars = (beatsPerMinute * times) / beatsPerBar
      return bars >= tempo.from * 0.9 && bars <= tempo.to * 1.1
    }
    if (fits(1)) return ''
    if (fits(2)) return PERHAPS_TWICE
    return fits(0.5) ? 'If you tapped the half beats: half as fast.' : ''
  },
  perhapsTwice: PERHAPS_TWICE,
  twice: 'Twice as fast',
  half: 'Half as fast',

  withMusic: 'Plays along with your music.',
  leave: 'Leave the music',
  earlier: 'Half a beat earlier',
  earlierShort: '½ beat earlier',
  laterShort: '½ beat later',
  later: 'Half a beat later',
  nudgeHint: 'If the picture is between the beats of the music:',
  /** "½ beat later than tapped"; '' when it is where it was tapped. @param halfBeats later is positive */
  nudged: (halfBeats: number): string => {
    if (halfBeats === 0) return ''
    const beats = Math.abs(halfBeats) / 2
    return `${fraction(beats)} ${beats > 1 ? 'beats' : 'beat'} ${halfBeats > 0 ? 'later' : 'earlier'} than tapped`
  },
  along: 'Play along',
  alongHint: 'The picture keeps the beat and the one that you tapped',
  /** @param bars whether its rounds are whole bars */
  isAlong: (along: boolean, playing: boolean, bars: boolean): string => {
    if (!along) return 'With music: from its next bar on, after counting in.'
    if (!playing) return 'Waits: Play begins on the music’s next bar. After half a minute it plays by itself again.'
    return `Plays along. ${bars ? '' : 'A few steps keep the beat; their rounds are no whole bars. '}Music wanders: tap again now and then, beginning on a 1.`
  },
  /** What no page can tell from the music's own way to the ear. */
  early: 'Most people tap a few hundredths of a second before the beat they hear; the picture is then as early.',
} as const
