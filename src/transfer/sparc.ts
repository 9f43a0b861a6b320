/** How much longer than the movement, in powers of two, the signal is made with zeros: finer steps of frequency. */
const PADDING = 4
/** Above this, in hertz, nothing is looked at. */
const HIGHEST_FREQUENCY = 10
/** The arc ends where the spectrum last has this part of its height. */
const THRESHOLD = 0.05

/** The size of the Fourier sum of `speed` at `radians` a sample. */
function magnitude(speed: Float64Array, radians: number): number {
  const [stepX, stepY] = [Math.cos(radians), Math.sin(radians)]
  let [x, y, sumX, sumY] = [1, 0, 0, 0]
  for (let k = 0; k < speed.length; k++) {
    const v = speed[k] as number
    sumX += v * x
    sumY += v * y
    const turned = x * stepX - y * stepY
    y = x * stepY + y * stepX
    x = turned
  }
  return Math.hypot(sumX, sumY)
}

/**
 * Spectral arc length: minus the length of the speed's spectrum, drawn one wide and one high, up to the last frequency
 * that matters. No unit, at most −1; the less negative, the smoother. One minimum-jerk movement has −1.41, each stop adds.
 * S. Balasubramanian, A. Melendez-Calderon, A. Roby-Brami, E. Burdet, J. NeuroEng. Rehabil. 12:112, 2015, with the
 * parameters of its authors' published code: padding 4, 10 Hz, threshold 0.05.
 * @param speed as `smoothness` has checked it: four or more, none below 0, not all 0
 * @param samplesASecond at least 20, for there to be a spectrum up to 10 Hz
 * @throws RangeError when so short (under 3 to 6 ms) that the first step of frequency is beyond 10 Hz already
 */
export function sparc(speed: Float64Array, samplesASecond: number): number {
  let length = 1
  while (length < speed.length) length *= 2
  length *= 2 ** PADDING

  // Few of all frequencies are at or below 10 Hz, so that a plain sum for each of them is quick enough (2,000 samples at
  // 100 a second: about 0.02 s). No speed is below 0, so that the spectrum is highest at 0 Hz, where the arc begins.
  const highest = Math.floor((HIGHEST_FREQUENCY * length) / samplesASecond)
  const height = magnitude(speed, 0)
  const spectrum = Float64Array.from(
    { length: highest + 1 },
    (_, k) => magnitude(speed, (2 * Math.PI * k) / length) / height,
  )
  const last = spectrum.findLastIndex((part) => part >= THRESHOLD)
  if (last === 0) {
    const milliseconds = Math.round((1000 * speed.length) / samplesASecond)
    throw new RangeError(
      `${speed.length} samples in ${milliseconds} ms are too short a movement for a spectrum up to 10 Hz`,
    )
  }

  let arc = 0
  for (let k = 1; k <= last; k++) {
    arc += Math.hypot(1 / last, (spectrum[k] as number) - (spectrum[k - 1] as number))
  }
  return -arc
}
