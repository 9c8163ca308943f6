import type { ReadingBatch } from './readingBatch.ts'

/** What else the samples of a batch are, at the same indices, in arrays that are used again for the next. */
export type BatchForces = {
  /** Whole microseconds of stream time. */
  timeUs: Float64Array
  /** Force before and after tare. */
  force: Float64Array
  tared: Float64Array
}

export type ForceBatch = {
  /** Works out times and forces of all samples of a batch. */
  fill(batch: ReadingBatch, toForce: (reading: number) => number, tareOffset: number): BatchForces
}

/** Empty, with room that follows the batch. */
export function createForceBatch(): ForceBatch {
  let arrays: BatchForces = roomFor(0)
  return {
    fill(batch, toForce, tareOffset) {
      const { count, values, timeS } = batch
      if (arrays.force.length < count) arrays = roomFor(values.length)
      const { timeUs, force, tared } = arrays
      for (let i = 0; i < count; i++) {
        const forceOfReading = toForce(values[i]!)
        force[i] = forceOfReading
        tared[i] = forceOfReading - tareOffset
        timeUs[i] = Math.round(timeS[i]! * 1e6)
      }
      return arrays
    },
  }
}

const roomFor = (samples: number): BatchForces => ({
  timeUs: new Float64Array(samples),
  force: new Float64Array(samples),
  tared: new Float64Array(samples),
})
