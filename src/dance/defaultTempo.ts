import type { Dance, Source } from './dance.ts'

export type DefaultTempo = {
  readonly barsPerMinute: number
  /** Where the range comes from; that its middle is played is our own judgement. */
  readonly source: Source
}

/** The tempo at which a dance is first played: the middle of its range, in bars a minute. */
export const defaultTempo = ({ tempo }: Pick<Dance, 'tempo'>): DefaultTempo => ({
  barsPerMinute: (tempo.from + tempo.to) / 2,
  source: tempo.source,
})
