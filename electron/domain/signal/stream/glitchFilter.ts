/** Receives what the filter lets through of the samples that waited, in order of time, and the glitches that it holds back. */
export type GlitchListener = {
  accept(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): void
  /** `jump`: how far the nearer of its samples lies from the last good one. */
  glitch(startTimeS: number, endTimeS: number, jump: number): void
}

/** Holds back lone electrical glitches. Constant memory; a sample waits only while it is under suspicion, two samples at most. */
export type GlitchFilter = {
  /** Lets samples through that are good without a doubt; returns the index of the first that must be questioned, `to`: none. */
  goodUntil(force: Float64Array, from: number, to: number): number
  /** Judges sample `at`, which was not let through: tells the listener of it, or lets it wait for those that follow. */
  question(timeS: Float64Array, force: Float64Array, reading: Float64Array, at: number): void
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
  const state = { last: Number.NaN, step: 0, noise: 0, waiting: 0 }
  const [waitingTimeS, waitingForce, waitingReading] = [room(), room(), room()]

  const tolerance = () => Math.max(suspectNoiseMultiple * state.noise, suspectStepMultiple * state.step)

  function goodUntil(force: Float64Array, from: number, to: number): number {
    if (state.waiting > 0) return from
    const noiseLimit = suspectNoiseMultiple * state.noise
    let { last, step } = state
    let i = from
    for (; i < to; i++) {
      const now = Math.abs(force[i]! - last)
      // Without a good sample before it nothing can be suspected.
      if (!(now <= Math.max(noiseLimit, suspectStepMultiple * step)) && !Number.isNaN(last)) break
      step = largestStep(step, now)
      last = force[i]!
    }
    state.last = last
    state.step = step
    return i
  }

  /** The newest good sample is what the next is judged by. */
  function follow(force: number): void {
    state.step = largestStep(state.step, Math.abs(force - state.last))
    state.last = force
  }

  function question(timeS: Float64Array, force: Float64Array, reading: Float64Array, at: number): void {
    if (state.waiting > 0 && endsGlitch(force[at]!)) follow(force[at]!)
    else {
      if (state.waiting > 0 && !goesOn(force[at]!)) release()
      if (goodUntil(force, at, at + 1) === at) {
        waitingTimeS[state.waiting] = timeS[at]!
        waitingForce[state.waiting] = force[at]!
        waitingReading[state.waiting] = reading[at]!
        state.waiting += 1
        return
      }
    }
    listener.accept(timeS, force, reading, at, at + 1)
  }

  /** The smallest jump of those that wait. */
  function smallestJump(): number {
    const first = Math.abs(waitingForce[0]! - state.last)
    return state.waiting === 1 ? first : Math.min(first, Math.abs(waitingForce[1]! - state.last))
  }

  /** The signal is back: what waited was a glitch. */
  function endsGlitch(force: number): boolean {
    const jump = smallestJump()
    const near = Math.max(returnShare * jump, Math.min(tolerance(), 0.5 * jump))
    if (!(Math.abs(force - state.last) <= near)) return false
    listener.glitch(waitingTimeS[0]!, waitingTimeS[state.waiting - 1]!, jump)
    state.waiting = 0
    return true
  }

  /** A second sample of the same glitch, perhaps: as far from the last good one, on the same side. */
  function goesOn(force: number): boolean {
    const first = waitingForce[0]! - state.last
    const now = force - state.last
    return state.waiting === 1 && alike(first, now) && Math.abs(now) > tolerance()
  }

  /** What waited was a true step after all. */
  function release(): void {
    const waited = state.waiting
    state.waiting = 0
    for (let i = 0; i < waited; i++) follow(waitingForce[i]!)
    listener.accept(waitingTimeS, waitingForce, waitingReading, 0, waited)
  }

  function finish(): void {
    if (state.waiting === 0) return
    // A jump up in the very last samples is unconfirmed, and an unconfirmed jump must not become the peak.
    if (waitingForce[0]! > state.last) {
      listener.glitch(waitingTimeS[0]!, waitingTimeS[state.waiting - 1]!, smallestJump())
      state.waiting = 0
    } else release()
  }

  return {
    goodUntil,
    question,
    restAt(level) {
      state.last = level
    },
    setNoise(noise) {
      state.noise = noise
    },
    finish,
  }
}

/** For what may wait. */
const room = () => new Float64Array(2)

/** The largest recent step, after one more of them; NaN: there was no sample before. */
function largestStep(before: number, now: number): number {
  return Number.isNaN(now) ? before : Math.max(now, before * stepMemory)
}

function alike(a: number, b: number): boolean {
  if (Math.sign(a) !== Math.sign(b)) return false
  const low = Math.min(Math.abs(a), Math.abs(b))
  return low >= doubleLikeness * Math.max(Math.abs(a), Math.abs(b))
}
