/** Noise and level of a signal at rest, robust against drift and knocks, in constant memory. */
export type IdleNoise = {
  /** Starts from a first estimate of the noise SD (null: none) and the level at rest. */
  begin(noise: number | null, level: number): void
  /** Takes a sample at rest. */
  push(timeS: number, force: number): void
  /** Looks at every sample, at rest or not, for the resolution. */
  see(force: number): void
  /**
   * Index of the first sample that is more than news of the same rest: more than `mostAbove` over the level, of a finer
   * step than any before, or the last of a block. Changes nothing.
   */
  quietUntil(timeS: Float64Array, force: Float64Array, from: number, to: number, mostAbove: number): number
  /** Takes samples up to what `quietUntil` has said, as `see` and `push` would. */
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): void
  /** Leaves the block that is being filled: the signal was not at rest. */
  dropBlock(): void
  /** Noise SD; null while nothing at rest was seen. */
  noise(): number | null
  /** Smallest step between neighbouring samples that differ: the resolution; 0 while none differ. */
  resolution(): number
  /** Level at rest. It follows a fall at once, a rise only slowly. */
  level(): number
  setRisePerS(risePerS: number): void
}

const blockSamples = 16
const blockS = 0.2
const keptBlocks = 15
const levelBlocks = 5

/** Median of chi-square with one degree of freedom, R qchisq(0.5, 1): of the square of one normal difference. */
const medianOfSquare = 0.454936423119573
/** Fewer steps from block to block than this say nothing of a wander. */
const leastSteps = 7

/** Median of chi-square over its degrees of freedom (Wilson and Hilferty 1931; within 0.1 % from 10 on). */
const medianOfVariance = (degrees: number) => (1 - 2 / (9 * degrees)) ** 3

type State = ReturnType<typeof noBlock>
const noBlock = () => ({
  n: 0,
  t0: 0,
  f0: 0,
  st: 0,
  sf: 0,
  stt: 0,
  sff: 0,
  stf: 0,
  last: Number.NaN,
  resolution: 0,
  noise: Number.NaN,
  level: 0,
  risePerS: 0,
  blocks: 0,
  steps: 0,
  mean: Number.NaN,
})

/**
 * Estimates noise block by block (at least 16 samples and 0.2 s) as SD about the block's own straight line, so that drift
 * does not count, and takes the median of the last 15 blocks, so that a knock does not.
 *
 *   s² = (Sff − Stf² / Stt) / (n − 2)        v = median(s²) / m                  m median of chi²/(n − 2)
 *   w  = median(d²) / (2 × 0.4549) − v / n   noise = sqrt( v + max(0, w) )       d step between means of neighbouring blocks
 *
 * w is the wander that a block is too short to see: hum folded down by slow sampling, or noise that a converter's own filter
 * has smoothed. Of white noise it is nothing, and a knock does not count here either.
 *
 * Level: median of the last 5 block means, followed down at once and up at no more than the given rate, so that a
 * slow press is not mistaken for drift. Sums are taken about the block's first sample.
 * Checked: tests/domain/signal/rest/idleNoise.spec.ts against NIST StRD NumAcc3 and NumAcc4 and seeded normal noise.
 */
export function createIdleNoise(): IdleNoise {
  const variances = new Float64Array(keptBlocks)
  const means = new Float64Array(levelBlocks)
  const steps = new Float64Array(keptBlocks)
  const sorted = new Float64Array(keptBlocks)
  const state = noBlock()

  function see(force: number): void {
    const step = Math.abs(force - state.last)
    if (step > 0 && (state.resolution === 0 || step < state.resolution)) state.resolution = step
    state.last = force
  }

  function push(timeS: number, force: number): void {
    if (state.n === 0) beginBlock(state, timeS, force)
    const t = timeS - state.t0
    const f = force - state.f0
    state.n += 1
    state.st += t
    state.sf += f
    state.stt += t * t
    state.sff += f * f
    state.stf += t * f
    if (state.n >= blockSamples && t >= blockS) endBlock(t)
  }

  function endBlock(lengthS: number): void {
    const { n, st, sf } = state
    const stt = state.stt - (st * st) / n
    const sff = state.sff - (sf * sf) / n
    const stf = state.stf - (st * sf) / n
    const variance = Math.max(0, sff - (stf * stf) / stt) / (n - 2)
    const mean = state.f0 + sf / n
    variances[state.blocks % keptBlocks] = variance / medianOfVariance(n - 2)
    means[state.blocks % levelBlocks] = mean
    state.blocks += 1
    if (!Number.isNaN(state.mean)) {
      steps[state.steps % keptBlocks] = (mean - state.mean) ** 2
      state.steps += 1
    }
    state.mean = mean
    state.n = 0
    const within = median(variances, Math.min(state.blocks, keptBlocks))
    state.noise = Math.sqrt(within + Math.max(0, wander() - within / n))
    const level = median(means, Math.min(state.blocks, levelBlocks))
    state.level = Math.min(level, state.level + state.risePerS * lengthS)
  }

  /** Variance of the block means, from the steps between them. */
  function wander(): number {
    if (state.steps < leastSteps) return 0
    return median(steps, Math.min(state.steps, keptBlocks)) / (2 * medianOfSquare)
  }

  function median(values: Float64Array, count: number): number {
    for (let i = 0; i < count; i++) sorted[i] = values[i]!
    const part = sorted.subarray(0, count).sort()
    return (part[(count - 1) >> 1]! + part[count >> 1]!) / 2
  }

  return {
    begin(noise, level) {
      // The first estimate is used until the first block is full, and forgotten then.
      state.blocks = 0
      state.steps = 0
      state.mean = Number.NaN
      state.noise = noise ?? Number.NaN
      state.level = level
      state.n = 0
    },
    push,
    see,
    quietUntil: (timeS, force, from, to, mostAbove) => firstNews(state, timeS, force, from, to, mostAbove),
    take: (timeS, force, from, to) => takeRest(state, timeS, force, from, to),
    dropBlock() {
      state.n = 0
    },
    noise: () => (Number.isNaN(state.noise) ? null : state.noise),
    resolution: () => state.resolution,
    level: () => state.level,
    setRisePerS(risePerS) {
      state.risePerS = risePerS
    },
  }
}

// The loops stand outside the closure, so that the compiler keeps one of each for all streams.

function firstNews(
  state: State,
  timeS: Float64Array,
  force: Float64Array,
  from: number,
  to: number,
  mostAbove: number,
): number {
  const { resolution, level, n } = state
  if (resolution === 0 || from >= to) return from
  const firstS = n === 0 ? timeS[from]! : state.t0
  const fullAt = from + blockSamples - 1 - n
  let { last } = state
  let i = from
  for (; i < to; i++) {
    const value = force[i]!
    const step = Math.abs(value - last)
    // Written so that a number that is none stops too.
    if (!(value - level <= mostAbove) || !(step >= resolution || step === 0)) break
    if (i >= fullAt && timeS[i]! - firstS >= blockS) break
    last = value
  }
  return i
}

function takeRest(state: State, timeS: Float64Array, force: Float64Array, from: number, to: number): void {
  if (from >= to) return
  if (state.n === 0) beginBlock(state, timeS[from]!, force[from]!)
  const { t0, f0 } = state
  let { st, sf, stt, sff, stf } = state
  for (let i = from; i < to; i++) {
    const t = timeS[i]! - t0
    const f = force[i]! - f0
    st += t
    sf += f
    stt += t * t
    sff += f * f
    stf += t * f
  }
  state.n += to - from
  state.st = st
  state.sf = sf
  state.stt = stt
  state.sff = sff
  state.stf = stf
  state.last = force[to - 1]!
}

function beginBlock(state: State, timeS: number, force: number): void {
  state.t0 = timeS
  state.f0 = force
  state.st = state.sf = state.stt = state.sff = state.stf = 0
}
