/** An AudioParam that remembers what was asked of it, and tells its value at any time. */
export type FakeParam = Pick<
  AudioParam,
  'setValueAtTime' | 'linearRampToValueAtTime' | 'setTargetAtTime' | 'cancelScheduledValues'
> & {
  value: number
  /** By the rules of the standard for a value that jumps or goes in a straight line. */
  at(time: number): number
  /** Whether it stays as it is between two times. */
  isSteady(from: number, to: number): boolean
}

type Asked = { readonly kind: 'set' | 'ramp'; readonly to: number; readonly time: number }

/** @param now the device's time: nothing can be asked for the past */
export function fakeParam(now: () => number): FakeParam {
  let first = 1
  let asked: Asked[] = []
  const ask = (kind: Asked['kind'], to: number, time: number): AudioParam => {
    const place = asked.findIndex((other) => other.time > Math.max(time, now()))
    asked.splice(place < 0 ? asked.length : place, 0, { kind, to, time: Math.max(time, now()) })
    return param as unknown as AudioParam
  }
  const param: FakeParam = {
    get value() {
      return param.at(now())
    },
    set value(to) {
      if (asked.length === 0) first = to
      else ask('set', to, now())
    },
    setValueAtTime: (to, time) => ask('set', to, time),
    linearRampToValueAtTime: (to, time) => ask('ramp', to, time),
    // As if it were there at once: only the loudness is set in this way.
    setTargetAtTime: (to, time) => ask('set', to, time),
    cancelScheduledValues(time) {
      asked = asked.filter((one) => one.time < time)
      return param as unknown as AudioParam
    },
    at(time) {
      let [value, since] = [first, 0]
      for (const { kind, to, time: when } of asked) {
        if (when > time) return kind === 'set' ? value : value + ((to - value) * (time - since)) / (when - since)
        value = to
        since = when
      }
      return value
    },
    isSteady(from, to) {
      const next = asked.find(({ time }) => time > from)
      return next === undefined || (next.kind === 'set' && next.time > to)
    },
  }
  return param
}
