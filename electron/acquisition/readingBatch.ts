import { withRoom } from '#domain/numbers/growingColumn.ts'

/** The readings of one chunk of bytes, in arrays that are used again for the next. Arrays change when room is made. */
export type ReadingBatch = {
  add(value: number, deviceTimeUs: number, sequence: number): void
  readonly count: number
  readonly values: Float64Array
  readonly deviceTimeUs: Float64Array
  readonly sequence: Float64Array
  /** Room for the times that the sample clock gives. */
  readonly timeS: Float64Array
  /** Leaves out the readings to which the clock gave no time (NaN). */
  dropUntimed(): void
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
      if (at === batch.values.length) makeRoom()
      batch.values[at] = value
      batch.deviceTimeUs[at] = deviceTimeUs
      batch.sequence[at] = sequence
      batch.count = at + 1
    },
    dropUntimed() {
      const { values, deviceTimeUs, sequence, timeS } = batch
      let kept = 0
      for (let i = 0; i < batch.count; i++) {
        if (Number.isNaN(timeS[i]!)) continue
        values[kept] = values[i]!
        deviceTimeUs[kept] = deviceTimeUs[i]!
        sequence[kept] = sequence[i]!
        timeS[kept] = timeS[i]!
        kept += 1
      }
      batch.count = kept
    },
    clear() {
      batch.count = 0
    },
  }

  function makeRoom(): void {
    for (const name of ['values', 'deviceTimeUs', 'sequence', 'timeS'] as const)
      batch[name] = withRoom(batch[name], batch.count + 1)
  }

  return batch
}
