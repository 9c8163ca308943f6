import type { DetectionSettings } from '#contract/breaks/detection.ts'

/** Notices a converter at its end code, or a load above capacity. */
export type ClippingWatch = {
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): void
  clipped(): boolean
  overCapacity(): boolean
  /** From where to where it was clipped. */
  startS(): number
  endS(): number
}

type EndCodes = NonNullable<DetectionSettings['endCodes']>

/** So many equal samples in a row at the top of a signal that never stood still before are an end code ... */
const flatSamples = 6
/** ... and so many are one of a noisy signal below the codes of the converter: an amplifier or a program may end before it does. */
const flatSamplesBelowCodes = 12
/** A signal stands still when more than this share of its steps are exactly nothing. */
const stillShare = 0.1
const leastSteps = 20

/**
 * Clipping is a reading at an end code where the codes are known, and a flat top: 6 equal samples or more at the highest force
 * of a loading whose steps were hardly ever nothing before. Where the codes are known, a quiet signal that stands so is a
 * load that is held, and a noisy one (`isNoisy`, told at rest) needs 12: of a tenth of steps that are nothing, six in a row come by chance
 * once in 10^5, twelve once in 10^11. Common practice, no source.
 *
 * Checked: tests/domain/signal/stream/clippingWatch.spec.ts.
 */
export function createClippingWatch(
  settings: Pick<DetectionSettings, 'endCodes' | 'capacityN'>,
  isNoisy = false,
): ClippingWatch {
  const { endCodes } = settings
  const longEnough = endCodes === null ? flatSamples : flatSamplesBelowCodes
  const capacity = settings.capacityN ?? Number.POSITIVE_INFINITY
  const state = { clipped: false, over: false, startS: Number.POSITIVE_INFINITY, endS: Number.NEGATIVE_INFINITY }
  const flat = {
    last: Number.NaN,
    run: 1,
    runStartS: Number.NaN,
    steps: 0,
    still: 0,
    highest: Number.NEGATIVE_INFINITY,
  }
  let isFlat = false

  function mark(startS: number, endS: number): void {
    state.startS = Math.min(state.startS, startS)
    state.endS = Math.max(state.endS, endS)
    state.clipped = true
  }

  function lookForFlatTop(timeS: Float64Array, force: Float64Array, from: number, to: number): void {
    let { last, runStartS, highest } = flat
    for (let i = from; i < to; i++) {
      if (force[i]! === last) {
        flat.run += 1
        const moved = flat.steps >= leastSteps && flat.still <= stillShare * flat.steps
        if (flat.run >= longEnough && last >= highest && moved) {
          isFlat = true
          mark(runStartS, timeS[i]!)
        }
        continue
      }
      // The steps of a run are counted when it ends, so that the run does not excuse itself.
      if (flat.run < longEnough || !isFlat) flat.still += flat.run - 1
      flat.steps += flat.run
      flat.run = 1
      last = force[i]!
      runStartS = timeS[i]!
      highest = Math.max(highest, last)
    }
    flat.last = last
    flat.runStartS = runStartS
    flat.highest = highest
  }

  function lookForEndCode(timeS: Float64Array, reading: Float64Array, from: number, to: number, codes: EndCodes): void {
    const [lowest, highest] = codes
    for (let i = from; i < to; i++) if (reading[i]! <= lowest || reading[i]! >= highest) mark(timeS[i]!, timeS[i]!)
  }

  return {
    take(timeS, force, reading, from, to) {
      for (let i = from; i < to && !state.over; i++) state.over = force[i]! > capacity
      if (endCodes === null || isNoisy) lookForFlatTop(timeS, force, from, to)
      if (endCodes !== null) lookForEndCode(timeS, reading, from, to, endCodes)
    },
    clipped: () => state.clipped,
    overCapacity: () => state.over,
    startS: () => state.startS,
    endS: () => state.endS,
  }
}
