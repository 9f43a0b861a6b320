/** The same in a random order (Fisher and Yates). */
export function shuffled<One>(some: readonly One[]): One[] {
  const order = [...some]
  for (let last = order.length - 1; last > 0; last--) {
    const other = Math.floor(Math.random() * (last + 1))
    ;[order[last], order[other]] = [order[other] as One, order[last] as One]
  }
  return order
}
