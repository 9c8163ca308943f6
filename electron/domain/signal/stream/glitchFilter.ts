/** Receives what the filter lets through, in order of time, and the glitches that it holds back. */
export type GlitchListener = {
  accept(timeS: number, force: number, reading: number): void
  /** `jump`: how far the nearer of its samples lies from the last good one. */
  glitch(startTimeS: number, endTimeS: number, jump: number): void
}

/** Holds back lone electrical glitches. Constant memory; a sample waits only while it is under suspicion, two samples at most. */
export type GlitchFilter = {
  push(timeS: number, force: number, reading: number): void
  /**
   * Lets samples through as long as none is suspect, without telling the listener of each; returns the index of the
   * first that is. Says what `push` would say, only faster.
   */
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): number
  /** The signal is at rest at this level, so that the very first sample can be judged too. */
  restAt(level: number): void
  /** Noise SD now known, in the unit of the force. */
  setNoise(noise: number): void
  /** Decides on what still waits; nothing more will come. */
  finish(): void
}

/** A sample is suspect when it lies further from the one before it than so many noise SDs ... */
export const suspectNoiseMultiple = 10
/** ... and than so many of the largest steps seen just before. */
const suspectStepMultiple = 4
/** The largest recent step is forgotten by this factor with every sample: about six samples. */
const stepMemory = 0.85
/** A glitch is over when the signal is back within this share of the jump. */
const returnShare = 0.3
/** The two samples of a double glitch lie at least this close together: the smaller jump over the larger. */
const doubleLikeness = 0.6

type State = ReturnType<typeof nothingSeen>
const nothingSeen = () => ({ last: Number.NaN, lastTimeS: 0, step: 0, noise: 0, waiting: 0 })

/**
 * A filter that tells one or two samples far from both neighbours (a glitch, as cheap converters give) from a true step.
 *
 *   suspect   |x − a| > max(10 σ, 4 d)        a last good sample, σ noise SD, d largest recent step
 *   glitch    x alone, or x and y alike on one side, and the next sample z back: |z − a| <= max(0.3 |x − a|, 10 σ, 4 d)
 *
 * The last sample of a ramp followed by a fall is never a glitch: it does not lie far from the one before it, and the
 * samples after the fall do not return. Checked: tests/domain/signal/stream/glitchFilter.spec.ts.
 */
export function createGlitchFilter(listener: GlitchListener): GlitchFilter {
  const state = nothingSeen()
  const waitingTimeS = new Float64Array(2)
  const waitingForce = new Float64Array(2)
  const waitingReading = new Float64Array(2)

  function accept(timeS: number, force: number, reading: number): void {
    const step = Math.abs(force - state.last)
    const remembered = state.step * stepMemory
    if (!Number.isNaN(step)) state.step = Math.max(step, remembered)
    state.last = force
    state.lastTimeS = timeS
    listener.accept(timeS, force, reading)
  }

  const tolerance = () => Math.max(suspectNoiseMultiple * state.noise, suspectStepMultiple * state.step)

  function hold(timeS: number, force: number, reading: number): void {
    waitingTimeS[state.waiting] = timeS
    waitingForce[state.waiting] = force
    waitingReading[state.waiting] = reading
    state.waiting += 1
  }

  function push(timeS: number, force: number, reading: number): void {
    if (state.waiting === 0) {
      // Without a good sample before it nothing can be suspected.
      if (Number.isNaN(state.last) || Math.abs(force - state.last) <= tolerance()) accept(timeS, force, reading)
      else hold(timeS, force, reading)
      return
    }
    const limit = tolerance()
    const first = waitingForce[0]! - state.last
    const now = force - state.last
    if (state.waiting === 1) {
      if (Math.abs(now) <= Math.max(returnShare * Math.abs(first), Math.min(limit, 0.5 * Math.abs(first)))) {
        listener.glitch(waitingTimeS[0]!, waitingTimeS[0]!, Math.abs(first))
        state.waiting = 0
        accept(timeS, force, reading)
      } else if (alike(first, now) && Math.abs(now) > limit) hold(timeS, force, reading)
      else {
        release()
        push(timeS, force, reading)
      }
      return
    }
    const smaller = Math.min(Math.abs(first), Math.abs(waitingForce[1]! - state.last))
    if (Math.abs(now) <= Math.max(returnShare * smaller, Math.min(limit, 0.5 * smaller))) {
      listener.glitch(waitingTimeS[0]!, waitingTimeS[1]!, smaller)
      state.waiting = 0
      accept(timeS, force, reading)
    } else {
      release()
      push(timeS, force, reading)
    }
  }

  function alike(a: number, b: number): boolean {
    if (a > 0 !== b > 0) return false
    const low = Math.min(Math.abs(a), Math.abs(b))
    return low >= doubleLikeness * Math.max(Math.abs(a), Math.abs(b))
  }

  /** What waited was a true step after all. */
  function release(): void {
    const waited = state.waiting
    state.waiting = 0
    for (let i = 0; i < waited; i++) accept(waitingTimeS[i]!, waitingForce[i]!, waitingReading[i]!)
  }

  function finish(): void {
    // A jump up in the very last samples is unconfirmed, and an unconfirmed jump must not become the peak.
    if (state.waiting > 0 && waitingForce[0]! > state.last) {
      const jumps = Array.from(waitingForce.subarray(0, state.waiting), (force) => Math.abs(force - state.last))
      listener.glitch(waitingTimeS[0]!, waitingTimeS[state.waiting - 1]!, Math.min(...jumps))
      state.waiting = 0
    }
    release()
  }

  return {
    push,
    take: (timeS, force, from, to) => takeUnsuspected(state, timeS, force, from, to),
    restAt(level) {
      state.last = level
    },
    setNoise(noise) {
      state.noise = noise
    },
    finish,
  }
}

/** Outside the closure, so that the compiler keeps one loop for all filters. */
function takeUnsuspected(state: State, timeS: Float64Array, force: Float64Array, from: number, to: number): number {
  if (state.waiting > 0 || Number.isNaN(state.last)) return from
  const noiseLimit = suspectNoiseMultiple * state.noise
  let { last, step } = state
  let i = from
  for (; i < to; i++) {
    const value = force[i]!
    const now = Math.abs(value - last)
    if (!(now <= noiseLimit || now <= suspectStepMultiple * step)) break
    const remembered = step * stepMemory
    step = Math.max(now, remembered)
    last = value
  }
  if (i > from) {
    state.last = last
    state.step = step
    state.lastTimeS = timeS[i - 1]!
  }
  return i
}
