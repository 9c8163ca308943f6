import { forceAt, type LoadSegment } from './loading/loadSegment.ts'

/** How fast a weight comes to rest on its hanger, and how it swings before. */
const setDownS = 0.15
const swingShare = 0.02
const swingS = 0.5
const swingHz = 2

/** Weights that somebody hangs on the cell, and how they swing until they hang still. */
export type HungWeights = {
  /** Other weights hang there from now on; 0: none. */
  put(timeS: number, forceN: number): void
  forceN(timeS: number): number
  hang(): boolean
}

/** Nothing hangs there yet. */
export function createHungWeights(): HungWeights {
  let target = 0
  let segment: LoadSegment | null = null

  const at = (timeS: number) => (segment === null ? 0 : forceAt(segment, timeS - segment.startS))

  return {
    put(timeS, forceN) {
      const fromN = at(timeS)
      target = forceN
      segment = {
        startS: timeS,
        durationS: Number.POSITIVE_INFINITY,
        c0: forceN,
        c1: 0,
        c2: 0,
        c3: 0,
        fallN: fromN - forceN,
        fallS: setDownS,
        // A cell that is free again does not swing below zero.
        ringN: forceN === 0 ? 0 : swingShare * Math.abs(forceN - fromN),
        ringS: swingS,
        ringHz: swingHz,
      }
    },
    forceN: at,
    hang: () => target !== 0,
  }
}
