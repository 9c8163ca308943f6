/** The readings of one chunk of bytes, in arrays that are used again for the next. */
export type ReadingBatch = {
  add(value: number, deviceTimeUs: number, sequence: number): void
  readonly count: number
  readonly values: Float64Array
  readonly deviceTimeUs: Float64Array
  readonly sequence: Float64Array
  /** Room for the times that the sample clock gives. */
  readonly timeS: Float64Array
  clear(): void
}

/** Empty, with room that grows as needed. */
export function createReadingBatch(): ReadingBatch {
  const batch = {
    count: 0,
    values: new Float64Array(256),
    deviceTimeUs: new Float64Array(256),
    sequence: new Float64Array(256),
    timeS: new Float64Array(256),
    add(value: number, deviceTimeUs: number, sequence: number) {
      const at = batch.count
      if (at === batch.values.length) grow()
      batch.values[at] = value
      batch.deviceTimeUs[at] = deviceTimeUs
      batch.sequence[at] = sequence
      batch.count = at + 1
    },
    clear() {
      batch.count = 0
    },
  }

  function grow() {
    for (const name of ['values', 'deviceTimeUs', 'sequence', 'timeS'] as const) {
      const larger = new Float64Array(2 * batch[name].length)
      larger.set(batch[name])
      batch[name] = larger
    }
  }

  return batch
}
