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

type Ring = ReturnType<typeof createRing>
const createRing = (keepS: number, leastSamples: number) => ({
  keepS,
  leastSamples,
  /** A power of two, so that a mask wraps the index. */
  capacity: firstCapacity,
  times: new Float64Array(firstCapacity),
  forces: new Float64Array(firstCapacity),
  readings: new Float64Array(firstCapacity),
  oldest: 0,
  used: 0,
})

/**
 * A ring that keeps `keepS` seconds, grown as the rate asks for it up to 262,144 samples, and never less than `leastSamples`.
 * Checked: tests/domain/signal/stream/sampleHistory.spec.ts.
 */
export function createSampleHistory(keepS: number, leastSamples: number): SampleHistory {
  const ring = createRing(keepS, leastSamples)

  const at = (index: number) => (ring.oldest + index) & (ring.capacity - 1)

  return {
    push(timeS, force, reading) {
      makeRoomFor(ring, 1)
      forgetBefore(ring, timeS)
      const index = at(ring.used)
      ring.times[index] = timeS
      ring.forces[index] = force
      ring.readings[index] = reading
      ring.used += 1
    },
    take: (timeS, force, reading, from, to) => takeAll(ring, timeS, force, reading, from, to),
    clear() {
      ring.oldest = 0
      ring.used = 0
    },
    count: () => ring.used,
    timeAt: (index) => ring.times[at(index)]!,
    forceAt: (index) => ring.forces[at(index)]!,
    readingAt: (index) => ring.readings[at(index)]!,
    copyFrom(index) {
      const copy = (from: Float64Array) => {
        const to = new Float64Array(ring.used - index)
        copyRing(ring, from, index, to)
        return to
      }
      return { timeS: copy(ring.times), force: copy(ring.forces), reading: copy(ring.readings) }
    },
    firstAtOrAfter(timeS) {
      let low = 0
      let high = ring.used
      while (low < high) {
        const middle = (low + high) >>> 1
        if (ring.times[at(middle)]! < timeS) low = middle + 1
        else high = middle
      }
      return low
    },
  }
}

// The loops stand outside the closure, so that the compiler keeps one of each for all streams.

function takeAll(
  ring: Ring,
  timeS: Float64Array,
  force: Float64Array,
  reading: Float64Array,
  from: number,
  to: number,
): void {
  makeRoomFor(ring, to - from)
  const { times, forces, readings, keepS, leastSamples, capacity } = ring
  const mask = capacity - 1
  let { oldest, used } = ring
  for (let i = from; i < to; i++) {
    const time = timeS[i]!
    while ((used > leastSamples && time - times[oldest]! > keepS) || used === capacity) {
      oldest = (oldest + 1) & mask
      used -= 1
    }
    const index = (oldest + used) & mask
    times[index] = time
    forces[index] = force[i]!
    readings[index] = reading[i]!
    used += 1
  }
  ring.oldest = oldest
  ring.used = used
}

/** Forgets what is too old at a time, s, and the oldest where the ring is full. */
function forgetBefore(ring: Ring, timeS: number): void {
  while (
    (ring.used > ring.leastSamples && timeS - ring.times[ring.oldest]! > ring.keepS) ||
    ring.used === ring.capacity
  ) {
    ring.oldest = (ring.oldest + 1) & (ring.capacity - 1)
    ring.used -= 1
  }
}

function makeRoomFor(ring: Ring, more: number): void {
  while (ring.used + more > ring.capacity && ring.capacity < mostHistorySamples) {
    const larger = ring.capacity * 2
    for (const name of ['times', 'forces', 'readings'] as const) {
      const moved = new Float64Array(larger)
      copyRing(ring, ring[name], 0, moved.subarray(0, ring.used))
      ring[name] = moved
    }
    ring.capacity = larger
    ring.oldest = 0
  }
}

/** Fills `to` with what one array of the ring holds from an index on. */
function copyRing(ring: Ring, from: Float64Array, index: number, to: Float64Array): void {
  const start = (ring.oldest + index) & (ring.capacity - 1)
  const untilEnd = Math.min(to.length, ring.capacity - start)
  to.set(from.subarray(start, start + untilEnd))
  to.set(from.subarray(0, to.length - untilEnd), untilEnd)
}
