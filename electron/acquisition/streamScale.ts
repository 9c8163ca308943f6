import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'
import { forceOfReading } from '#domain/calibration/scale/forceScale.ts'

/** What a reading of the stream is in newtons, once the device has shown its unit. */
export type StreamScale = {
  /** The readings come in that unit from now on. */
  begin(unit: ReadingUnit): void
  /** null before the first reading. */
  unit(): ReadingUnit | null
  /** False: no scale is known for what comes, and force is the reading itself. */
  hasForce(): boolean
  /** Force of a reading before tare. */
  toForce(): (reading: number) => number
}

const asItIs = (reading: number) => reading

/** Nothing has been read yet. */
export function createStreamScale(scaleFor: (unit: ReadingUnit) => ForceScale): StreamScale {
  let unit: ReadingUnit | null = null
  let toForce: ((reading: number) => number) | null = asItIs
  return {
    begin(next) {
      unit = next
      toForce = forceOfReading(scaleFor(next), next)
    },
    unit: () => unit,
    hasForce: () => toForce !== null,
    toForce: () => toForce ?? asItIs,
  }
}
