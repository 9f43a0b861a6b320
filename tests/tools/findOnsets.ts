/**
 * Where sounds begin, as sample numbers; made for the tests alone and without a look at how sounds are made. The rectified
 * signal crosses a threshold after some quiet; from there back to where it leaves silence.
 * @param threshold above the noise, below the quietest sound
 */
export function findOnsets(samples: Float32Array, sampleRate: number, threshold = 0.01): number[] {
  const quiet = 0.005 * sampleRate
  const silence = 1e-7
  const size = (k: number): number => Math.abs(samples[k] ?? 0)
  const onsets: number[] = []
  let loud = Number.NEGATIVE_INFINITY
  for (let k = 0; k < samples.length; k++) {
    if (size(k) <= threshold) continue
    if (k - loud > quiet) {
      let first = k
      // One sample of nothing may be where a wave goes through zero; two are silence.
      while (first > 0 && (size(first - 1) > silence || size(first - 2) > silence)) first--
      onsets.push(first)
    }
    loud = k
  }
  return onsets
}
