import type { DetectionSettings } from '#contract/breaks/detection.ts'

/** Notices a converter at its end code, or a load above capacity. */
export type ClippingWatch = {
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): void
  clipped(): boolean
  overCapacity(): boolean
  startS(): number
  endS(): number
}

/** So many equal samples in a row at the top of a signal that never stood still before are an end code. */
const flatSamples = 6
/** A signal stands still when more than this share of its steps are exactly nothing. */
const stillShare = 0.1
const leastSteps = 20

/**
 * Clipping is a reading at an end code where the codes are known; where they are not, six equal samples or more at the
 * highest force of a loading whose steps were hardly ever nothing before.
 *
 * Checked: tests/domain/signal/stream/clippingWatch.spec.ts.
 */
export function createClippingWatch(settings: Pick<DetectionSettings, 'endCodes' | 'capacityN'>): ClippingWatch {
  const { endCodes } = settings
  const capacity = settings.capacityN ?? Number.POSITIVE_INFINITY
  const state = { clipped: false, over: false, startS: 0, endS: 0 }
  const flat = { last: Number.NaN, run: 1, runStartS: 0, steps: 0, still: 0, highest: Number.NEGATIVE_INFINITY }

  function mark(startS: number, endS: number): void {
    if (!state.clipped) state.startS = startS
    state.clipped = true
    state.endS = endS
  }

  function lookForFlatTop(timeS: number, force: number): void {
    if (force === flat.last) {
      flat.run += 1
      const moved = flat.steps >= leastSteps && flat.still <= stillShare * flat.steps
      if (flat.run >= flatSamples && force >= flat.highest && moved) mark(flat.runStartS, timeS)
      return
    }
    // The steps of a run are counted when it ends, so that the run does not excuse itself.
    if (flat.run < flatSamples || !state.clipped) flat.still += flat.run - 1
    flat.steps += flat.run
    flat.last = force
    flat.run = 1
    flat.runStartS = timeS
    if (force > flat.highest) flat.highest = force
  }

  return {
    take(timeS, force, reading, from, to) {
      for (let i = from; i < to; i++) {
        if (force[i]! > capacity) state.over = true
        if (endCodes === null) lookForFlatTop(timeS[i]!, force[i]!)
        else if (reading[i]! <= endCodes[0] || reading[i]! >= endCodes[1]) mark(timeS[i]!, timeS[i]!)
      }
    },
    clipped: () => state.clipped,
    overCapacity: () => state.over,
    startS: () => state.startS,
    endS: () => state.endS,
  }
}
