/**
 * Samples at another rate, by straight lines between them: enough for speech, whose hiss alone suffers. Before the first and
 * after the last there is silence.
 * @param rates what they have and what they are to have, in hertz
 */
export function resampled(samples: Float32Array, from: number, to: number): Float32Array {
  if (from === to) return samples
  const wanted = new Float32Array(Math.ceil((samples.length * to) / from))
  for (let k = 0; k < wanted.length; k++) {
    const place = (k * from) / to
    const before = Math.floor(place)
    const sample = samples[before] ?? 0
    wanted[k] = sample + ((samples[before + 1] ?? 0) - sample) * (place - before)
  }
  return wanted
}
