/** The newest samples of a stream, as long as a span of time needs. */
export type SampleRing = {
  push(timeUs: number, reading: number): void
  /** The same for samples [from, to) of arrays. */
  add(timeUs: Float64Array, reading: Float64Array, from: number, to: number): void
  length(): number
  /** Calls back with the newest so many samples (or all there are), oldest first. */
  newest(count: number, take: (timeUs: number, reading: number) => void): void
  /** Calls back with the samples of the last so many seconds before the newest, oldest first. */
  lastSeconds(seconds: number, take: (timeUs: number, reading: number) => void): void
  clear(): void
}

/** Keeps at least the last `spanS` seconds; its memory follows the sample rate and stops growing there. */
export function createSampleRing(spanS: number): SampleRing {
  if (!(spanS > 0)) throw new RangeError('createSampleRing requires a span above 0 s')
  const spanUs = spanS * 1e6
  let times = new Float64Array(256)
  let readings = new Float64Array(256)
  let first = 0
  let length = 0

  function grow() {
    const size = times.length
    const largerTimes = new Float64Array(2 * size)
    const largerReadings = new Float64Array(2 * size)
    for (let i = 0; i < length; i++) {
      largerTimes[i] = times[(first + i) & (size - 1)]!
      largerReadings[i] = readings[(first + i) & (size - 1)]!
    }
    times = largerTimes
    readings = largerReadings
    first = 0
  }

  function newest(count: number, take: (timeUs: number, reading: number) => void): void {
    const mask = times.length - 1
    for (let i = Math.max(0, length - count); i < length; i++) {
      const at = (first + i) & mask
      take(times[at]!, readings[at]!)
    }
  }

  function push(timeUs: number, reading: number): void {
    // The size is a power of two, so that the mask wraps the index.
    while (length > 0 && times[first]! < timeUs - spanUs) {
      first = (first + 1) & (times.length - 1)
      length -= 1
    }
    if (length === times.length) grow()
    const last = (first + length) & (times.length - 1)
    times[last] = timeUs
    readings[last] = reading
    length += 1
  }

  return {
    push,
    add(timeUs, reading, from, to) {
      for (let i = from; i < to; i++) push(timeUs[i]!, reading[i]!)
    },
    length: () => length,
    newest,
    lastSeconds(seconds, take) {
      const sinceUs = times[(first + length - 1) & (times.length - 1)]! - seconds * 1e6
      let count = 0
      while (count < length && times[(first + length - 1 - count) & (times.length - 1)]! >= sinceUs) count += 1
      newest(count, take)
    },
    clear() {
      length = 0
    },
  }
}
