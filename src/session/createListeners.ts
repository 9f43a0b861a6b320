/** Who wants to be told of something. */
export type Listeners<Told> = {
  /** Returns what stops it. */
  add(listener: (told: Told) => void): () => void
  tell(told: Told): void
}

export function createListeners<Told>(): Listeners<Told> {
  const all = new Set<(told: Told) => void>()
  return {
    add(listener) {
      all.add(listener)
      return () => all.delete(listener)
    },
    tell(told) {
      for (const listener of all) listener(told)
    },
  }
}
