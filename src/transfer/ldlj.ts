/** Differences below this part of the peak are rounding. With a million samples a movement’s own are larger still. */
const ROUNDING = 1e-12

/**
 * Logarithm of the dimensionless jerk: −ln(T³ / peak² · ∫ (d²v/dt²)² dt). No unit; higher is smoother, and neither
 * duration nor amplitude matters. One minimum-jerk movement has −5.32 (−5.30 from 101 samples), two that touch −8.09.
 * N. Hogan, D. Sternad, J. Motor Behavior 41(6):529–534, 2009; S. Balasubramanian, A. Melendez-Calderon, E. Burdet, IEEE
 * Trans. Biomed. Eng. 59(8):2126–2136, 2012; discrete as in the latter’s published code: T is the number of samples times
 * their distance in time, jerk the second difference of speed.
 *
 * It sees nothing of how a movement begins and ends outside the samples: constant speed, and speed that changes evenly,
 * have no jerk inside and get +Infinity, although they may start and stop brutally. Add a 0 at each end where that counts,
 * and never use it alone to call a movement smooth.
 * @param speed as `smoothness` has checked it: four or more, the highest of them 1
 * @returns +Infinity where there is no jerk
 */
export function ldlj(speed: Float64Array): number {
  let sum = 0
  for (let k = 1; k + 1 < speed.length; k++) {
    const [before, here, after] = [speed[k - 1], speed[k], speed[k + 1]] as unknown as [number, number, number]
    const bend = after - 2 * here + before
    if (Math.abs(bend) > ROUNDING) sum += bend * bend
  }
  // With T = N · dt and jerk = bend / dt² the distance in time cancels: T³ · Σ jerk² · dt = N³ · Σ bend².
  return -Math.log(speed.length ** 3 * sum)
}
