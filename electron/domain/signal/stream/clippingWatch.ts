import type { DetectionSettings } from '#contract/breaks/detection.ts'

/** Notices a converter at its end code, or a load above capacity. */
export type ClippingWatch = {
  push(timeS: number, force: number, reading: number): void
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

type Limits = { lowest: number; highestCode: number; capacity: number }
type State = ReturnType<typeof nothingSeen>
const nothingSeen = () => ({
  last: Number.NaN,
  run: 1,
  runStartS: 0,
  steps: 0,
  still: 0,
  highest: Number.NEGATIVE_INFINITY,
  startS: 0,
  endS: 0,
})

/**
 * Clipping is a reading at an end code where the codes are known; where they are not, six equal samples or more at the
 * highest force of a loading whose steps were hardly ever nothing before.
 *
 * Checked: tests/domain/signal/stream/clippingWatch.spec.ts.
 */
export function createClippingWatch(settings: Pick<DetectionSettings, 'endCodes' | 'capacityN'>): ClippingWatch {
  const { endCodes, capacityN } = settings
  const lowest = endCodes === null ? Number.NEGATIVE_INFINITY : endCodes[0]
  const highestCode = endCodes === null ? Number.POSITIVE_INFINITY : endCodes[1]
  const capacity = capacityN ?? Number.POSITIVE_INFINITY
  const limits: Limits = { lowest, highestCode, capacity }
  const state = nothingSeen()
  let clipped = false
  let over = false

  function mark(startS: number, endS: number): void {
    if (!clipped) state.startS = startS
    clipped = true
    state.endS = endS
  }

  function push(timeS: number, force: number, reading: number): void {
    if (force > capacity) over = true
    if (endCodes !== null) {
      if (reading <= lowest || reading >= highestCode) mark(timeS, timeS)
      return
    }
    if (force === state.last) {
      state.run += 1
      if (
        state.run >= flatSamples &&
        force >= state.highest &&
        state.steps >= leastSteps &&
        state.still <= stillShare * state.steps
      )
        mark(state.runStartS, timeS)
      return
    }
    // The steps of a run are counted when it ends, so that the run does not excuse itself.
    if (state.run < flatSamples || !clipped) state.still += state.run - 1
    state.steps += state.run
    state.last = force
    state.run = 1
    state.runStartS = timeS
    if (force > state.highest) state.highest = force
  }

  function take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): void {
    for (let i = from; i < to; ) {
      i =
        endCodes === null ? takeMoving(state, capacity, timeS, force, i, to) : takeInside(limits, force, reading, i, to)
      if (i === to) return
      push(timeS[i]!, force[i]!, reading[i]!)
      i += 1
    }
  }

  return {
    push,
    take,
    clipped: () => clipped,
    overCapacity: () => over,
    startS: () => state.startS,
    endS: () => state.endS,
  }
}

// The loops stand outside the closure, so that the compiler keeps one of each for all loadings.

/** Takes samples as long as their readings lie between the end codes and the load within capacity. */
function takeInside(limits: Limits, force: Float64Array, reading: Float64Array, from: number, to: number): number {
  const { lowest, highestCode, capacity } = limits
  let i = from
  while (i < to && reading[i]! > lowest && reading[i]! < highestCode && force[i]! <= capacity) i += 1
  return i
}

/** Takes samples as long as each differs from the one before it and the load is within capacity. */
function takeMoving(
  state: State,
  capacity: number,
  timeS: Float64Array,
  force: Float64Array,
  from: number,
  to: number,
): number {
  let { last, highest } = state
  let i = from
  // A run of equal samples that ends here is counted by `push`.
  if (i < to && state.run > 1) return i
  for (; i < to; i++) {
    const value = force[i]!
    if (value === last || value > capacity) break
    last = value
    if (value > highest) highest = value
  }
  if (i > from) {
    state.steps += i - from
    state.last = last
    state.runStartS = timeS[i - 1]!
    state.highest = highest
  }
  return i
}
