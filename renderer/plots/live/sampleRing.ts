import { createColumnRing } from '#domain/signal/stream/columnRing.ts'

/** The newest samples of a stream, oldest first, in a limited amount of memory. */
export type SampleRing = {
  readonly length: number
  /** Adds samples, and what of them can be load (null: nothing); one at the same time as the last is passed over, an earlier one starts the ring afresh (the stream began again). */
  push(timeS: Float64Array, force: Float64Array, loadRange: readonly [lowest: number, highest: number] | null): void
  clear(): void
  timeAt(index: number): number
  forceAt(index: number): number
  /** The force of a sample as far as it can be load; NaN: it cannot. */
  loadAt(index: number): number
  /** Index of the first sample at or after the time; length when there is none. */
  indexFrom(timeS: number): number
}

/** Keeps the newest `capacity` samples; pushing costs the same however long the stream runs. */
export function createSampleRing(capacity: number): SampleRing {
  if (!Number.isInteger(capacity) || capacity < 2)
    throw new RangeError('createSampleRing requires a capacity of 2 or more')
  const ring = createColumnRing(3, capacity)
  let lastS = Number.NEGATIVE_INFINITY

  function clear(): void {
    ring.clear()
    lastS = Number.NEGATIVE_INFINITY
  }

  function at(column: number, index: number): number {
    if (index < 0 || index >= ring.length()) throw new RangeError(`there is no sample ${index} among ${ring.length()}`)
    return ring.at(column, index)
  }

  return {
    get length() {
      return ring.length()
    },
    push(timeS, force, loadRange) {
      if (timeS.length !== force.length) throw new RangeError('push requires as many times as forces')
      const [lowest, highest] = loadRange ?? [Number.NaN, Number.NaN]
      const load = force.map((one) => Math.max(lowest, Math.min(highest, one)))
      for (let i = 0; i < timeS.length; i++) {
        if (timeS[i]! === lastS) continue
        if (timeS[i]! < lastS) clear()
        ring.append([timeS, force, load], i, i + 1)
        lastS = timeS[i]!
      }
    },
    clear,
    timeAt: (index) => at(0, index),
    forceAt: (index) => at(1, index),
    loadAt: (index) => at(2, index),
    indexFrom: ring.firstAtOrAfter,
  }
}
