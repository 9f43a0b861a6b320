/**
 * Letters to insert, remove, change or swap with their neighbour to make one word of the other
 * (optimal string alignment distance).
 */
function distance(from: string, to: string): number {
  let before: number[] = []
  let last = Array.from({ length: to.length + 1 }, (_, column) => column)
  for (let row = 1; row <= from.length; row++) {
    const next = [row]
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1]
      const swapped = row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1]
      const changed = (last[column - 1] ?? 0) + (same ? 0 : 1)
      const shifted = Math.min((last[column] ?? 0) + 1, (next[column - 1] ?? 0) + 1)
      next.push(Math.min(changed, shifted, swapped ? (before[column - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY))
    }
    before = last
    last = next
  }
  return last[to.length] ?? 0
}

/**
 * The word that was probably meant, capitals apart; '' when none is near (more than a third of the letters differ).
 * Of two words equally near, the first.
 */
export function nearestWord(word: string, words: readonly string[]): string {
  const typed = word.trim().toLowerCase()
  let nearest = ''
  let least = Number.POSITIVE_INFINITY
  for (const candidate of words) {
    const most = Math.max(1, Math.floor(Math.max(typed.length, candidate.length) / 3))
    if (Math.abs(typed.length - candidate.length) > most) continue
    const apart = distance(typed, candidate.toLowerCase())
    if (apart <= most && apart < least) {
      nearest = candidate
      least = apart
    }
  }
  return nearest
}
