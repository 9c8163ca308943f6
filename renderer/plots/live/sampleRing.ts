/** The newest samples of a stream, oldest first, in a fixed amount of memory. */
export type SampleRing = {
  readonly length: number
  /** Adds samples; one at the same time as the last is passed over, an earlier one starts the ring afresh (the stream began again). */
  push(timeS: Float64Array, force: Float64Array): void
  clear(): void
  timeAt(index: number): number
  forceAt(index: number): number
  /** Index of the first sample at or after the time; length when there is none. */
  indexFrom(timeS: number): number
}

/** Keeps the newest `capacity` samples; pushing costs the same however long the stream runs. */
export function createSampleRing(capacity: number): SampleRing {
  if (!Number.isInteger(capacity) || capacity < 2)
    throw new RangeError('createSampleRing requires a capacity of 2 or more')
  const times = new Float64Array(capacity)
  const forces = new Float64Array(capacity)
  let start = 0
  let length = 0

  function slot(index: number): number {
    if (index < 0 || index >= length) throw new RangeError(`there is no sample ${index} among ${length}`)
    const at = start + index
    return at < capacity ? at : at - capacity
  }

  return {
    get length() {
      return length
    },
    push(timeS, force) {
      if (timeS.length !== force.length) throw new RangeError('push requires as many times as forces')
      for (let i = 0; i < timeS.length; i++) {
        const time = timeS[i]!
        const last = length > 0 ? times[slot(length - 1)]! : Number.NEGATIVE_INFINITY
        if (time === last) continue
        if (time < last) {
          start = 0
          length = 0
        }
        const at = (start + length) % capacity
        times[at] = time
        forces[at] = force[i]!
        if (length < capacity) length++
        else start = (start + 1) % capacity
      }
    },
    clear() {
      start = 0
      length = 0
    },
    timeAt: (index) => times[slot(index)]!,
    forceAt: (index) => forces[slot(index)]!,
    indexFrom(timeS) {
      let low = 0
      let high = length
      while (low < high) {
        const middle = (low + high) >>> 1
        if (times[slot(middle)]! < timeS) low = middle + 1
        else high = middle
      }
      return low
    },
  }
}
