import { createNewestValues } from './newestValues.ts'
import { createRestBlock } from './restBlock.ts'

/** Noise and level of a signal at rest, robust against drift and knocks, in constant memory. */
export type IdleNoise = {
  /** Starts from a first estimate of the noise SD and the level at rest. */
  begin(noise: number, level: number): void
  /** Takes a sample at rest; true when the noise is known anew. */
  push(timeS: number, force: number): boolean
  /** Looks at every sample, at rest or not, for the resolution; true when it is known anew. */
  see(force: number): boolean
  /** Leaves the block that is being filled: the signal was not at rest. */
  dropBlock(): void
  /** Noise SD; NaN before it has begun. */
  noise(): number
  /** Smallest step between neighbouring samples that differ: the resolution; 0 while none differ. */
  resolution(): number
  /** Level at rest. It follows a fall at once, a rise only slowly. */
  level(): number
  setRisePerS(risePerS: number): void
}

const keptBlocks = 15
const levelBlocks = 5

/** Median of chi-square with one degree of freedom, R qchisq(0.5, 1): of the square of one normal difference. */
const medianOfSquare = 0.454936423119573
/** Fewer steps from block to block than this say nothing of a wander. */
const leastSteps = 7

/** Median of chi-square over its degrees of freedom (Wilson and Hilferty 1931; within 0.1 % from 10 on). */
const medianOfVariance = (degrees: number) => (1 - 2 / (9 * degrees)) ** 3

/**
 * Estimates noise block by block (restBlock.ts) as SD about the block's own straight line, so that drift does not count,
 * and takes the median of the last 15 blocks, so that a knock does not.
 *
 *   v = median(s²) / m      w = median(d²) / (2 × 0.4549) − v / n      noise = sqrt( v + max(0, w) )
 *
 *   s² variance within a block of n samples, m median of chi²/(n − 2), d step between means of neighbouring blocks
 *
 * w is the wander that a block is too short to see: hum folded down by slow sampling, or noise that a converter's own filter
 * has smoothed. Of white noise it is nothing, and a knock does not count here either.
 *
 * Level: median of the last 5 block means, followed down at once and up at no more than the given rate, so that a
 * slow press is not mistaken for drift.
 * Checked: tests/domain/signal/rest/idleNoise.spec.ts against NIST StRD NumAcc3 and NumAcc4 and seeded normal noise.
 */
export function createIdleNoise(): IdleNoise {
  const block = createRestBlock()
  const variances = createNewestValues(keptBlocks)
  const means = createNewestValues(levelBlocks)
  const steps = createNewestValues(keptBlocks)
  const state = { last: Number.NaN, resolution: 0, noise: Number.NaN, level: Number.NaN, risePerS: 0, mean: Number.NaN }

  function endBlock(): void {
    const n = block.samples()
    const mean = block.mean()
    variances.push(block.varianceAboutLine() / medianOfVariance(n - 2))
    means.push(mean)
    if (!Number.isNaN(state.mean)) steps.push((mean - state.mean) ** 2)
    state.mean = mean
    const within = variances.median()
    state.noise = Math.sqrt(within + Math.max(0, wander() - within / n))
    state.level = Math.min(means.median(), state.level + state.risePerS * block.lengthS())
    block.clear()
  }

  /** Variance of the block means, from the steps between them. */
  const wander = () => (steps.count() < leastSteps ? 0 : steps.median() / (2 * medianOfSquare))

  return {
    begin(noise, level) {
      // The first estimate is used until the first block is full, and forgotten then.
      for (const values of [variances, means, steps]) values.clear()
      block.clear()
      state.mean = Number.NaN
      state.noise = noise
      state.level = level
    },
    push(timeS, force) {
      const isFull = block.push(timeS, force)
      if (isFull) endBlock()
      return isFull
    },
    see(force) {
      const step = Math.abs(force - state.last)
      state.last = force
      if (!(step > 0 && (state.resolution === 0 || step < state.resolution))) return false
      state.resolution = step
      return true
    },
    dropBlock: block.clear,
    noise: () => state.noise,
    resolution: () => state.resolution,
    level: () => state.level,
    setRisePerS(risePerS) {
      state.risePerS = risePerS
    },
  }
}
