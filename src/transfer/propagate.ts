/** Something that happens no sooner than it is due, and no sooner than what it waits for allows. */
export type Event = {
  /** When it is due; −∞: whenever the others allow. */
  readonly due: number
  /** What it waits for: earlier events, by index, and the least time after each. */
  readonly after: readonly { readonly event: number; readonly least: number }[]
}

/**
 * When events happen that wait for each other: each at the latest of its due time and of all that it waits for,
 * x = A ⊗ x ⊕ d in max-plus algebra (Heidergott, Olsder & van der Woude, Max Plus at Work, 2006; delays in timetables:
 * Goverde, Transp. Res. B 41:179–201, 2007). Times in any one unit.
 * @param events in an order in which each waits for earlier ones only
 * @throws RangeError when one waits for itself or a later one
 */
export function propagate(events: readonly Event[]): number[] {
  const times: number[] = []
  for (const [index, { due, after }] of events.entries()) {
    let time = due
    for (const { event, least } of after) {
      const before = times[event]
      if (before === undefined) throw new RangeError(`event ${index} waits for ${event}, which does not come before it`)
      time = Math.max(time, before + least)
    }
    times.push(time)
  }
  return times
}

/**
 * One after another, each waiting for the one before: a_k = max(d_k, a_(k−1) + p_k).
 * @param due when each is due
 * @param least the least time from the one before to each; the first is not looked at
 * @param first when the first happens; it may be late
 */
export const chain = (due: readonly number[], least: readonly number[], first: number): number[] =>
  propagate(
    due.map((time, k) =>
      k === 0
        ? { due: Math.max(time, first), after: [] }
        : { due: time, after: [{ event: k - 1, least: least[k] as number }] },
    ),
  )
