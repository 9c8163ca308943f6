/** The newest samples of a stream at rest, so that a capture can begin before it was noticed. */
export type SampleHistory = {
  push(timeS: number, force: number, reading: number): void
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): void
  clear(): void
  /** How many samples are in memory; 0 is the oldest of them. */
  count(): number
  timeAt(index: number): number
  forceAt(index: number): number
  readingAt(index: number): number
  /** Copies of the samples from an index on. */
  copyFrom(index: number): { timeS: Float64Array; force: Float64Array; reading: Float64Array }
  /** Index of the oldest sample at or after a time. */
  firstAtOrAfter(timeS: number): number
}

const firstCapacity = 1024

/** Most samples that are kept whatever their rate: 26 s at 10 kHz, 6 MB. */
export const mostHistorySamples = 262_144

/**
 * A ring that keeps `keepS` seconds, grown as the rate asks for it up to 262,144 samples, and never less than `leastSamples`.
 * Checked: tests/domain/signal/sampleHistory.spec.ts.
 */
export function createSampleHistory(keepS: number, leastSamples: number): SampleHistory {
  let capacity = firstCapacity
  let times = new Float64Array(capacity)
  let forces = new Float64Array(capacity)
  let readings = new Float64Array(capacity)
  let oldest = 0
  let used = 0

  const at = (index: number) => (oldest + index) & (capacity - 1)

  function grow(): void {
    const larger = capacity * 2
    const moved = (from: Float64Array) => {
      const to = new Float64Array(larger)
      for (let i = 0; i < used; i++) to[i] = from[at(i)]!
      return to
    }
    times = moved(times)
    forces = moved(forces)
    readings = moved(readings)
    capacity = larger
    oldest = 0
  }

  /** Forgets what is too old at a time, s, and has room for one more afterwards. */
  function makeRoom(timeS: number): void {
    while (used > leastSamples && timeS - times[oldest]! > keepS) {
      oldest = (oldest + 1) & (capacity - 1)
      used -= 1
    }
    if (used === capacity) {
      if (capacity < mostHistorySamples) grow()
      else {
        oldest = (oldest + 1) & (capacity - 1)
        used -= 1
      }
    }
  }

  function push(timeS: number, force: number, reading: number): void {
    makeRoom(timeS)
    const index = at(used)
    times[index] = timeS
    forces[index] = force
    readings[index] = reading
    used += 1
  }

  function take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): void {
    for (let i = from; i < to; i++) {
      const time = timeS[i]!
      makeRoom(time)
      const index = (oldest + used) & (capacity - 1)
      times[index] = time
      forces[index] = force[i]!
      readings[index] = reading[i]!
      used += 1
    }
  }

  return {
    push,
    take,
    clear() {
      oldest = 0
      used = 0
    },
    count: () => used,
    timeAt: (index) => times[at(index)]!,
    forceAt: (index) => forces[at(index)]!,
    readingAt: (index) => readings[at(index)]!,
    copyFrom(index) {
      const copy = (from: Float64Array) => {
        const to = new Float64Array(used - index)
        for (let i = 0; i < to.length; i++) to[i] = from[at(index + i)]!
        return to
      }
      return { timeS: copy(times), force: copy(forces), reading: copy(readings) }
    },
    firstAtOrAfter(timeS) {
      let low = 0
      let high = used
      while (low < high) {
        const middle = (low + high) >>> 1
        if (times[at(middle)]! < timeS) low = middle + 1
        else high = middle
      }
      return low
    },
  }
}
