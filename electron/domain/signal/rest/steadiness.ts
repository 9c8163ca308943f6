/** What the newest stretch of signal is worth as a zero. */
export type Steadiness = {
  /** Mean, sample SD and number of the samples in the window; null while there are fewer than two. */
  mean: number | null
  sd: number | null
  readings: number
  /** null: steady enough to take the zero; else why not, in words. */
  unsteadyBecause: string | null
}

export type SteadinessOptions = {
  /** Length of the window, s. */
  windowS: number
  /** Fewest readings that make a mean. */
  leastReadings: number
  /** Steady means: no more change over the window than this, in the unit of the force; 0: judged by noise alone. */
  allowedChange: number
}

export const defaultSteadiness: SteadinessOptions = { windowS: 1, leastReadings: 5, allowedChange: 0 }

/** Judges sample by sample whether a signal is steady, in constant memory. */
export type SteadinessWatch = {
  push(timeS: number, force: number): void
  judge(): Steadiness
  reset(): void
}

const mostBlocks = 16
/** A mean that changed by more than so many of its own standard errors has truly moved. */
const movedStandardErrors = 5
/** Noise of one block against the quietest one: more than this is a disturbance (knock, hand on the bench). */
const disturbedRatio = 4

/**
 * A watch over the last `windowS` seconds, kept as up to 16 blocks of equal length with count, mean and sum of squares each.
 *
 *   mean, SD   of all samples in the window (Chan, Golub and LeVeque's pairwise update, so a large offset does no harm)
 *   change     mean of the last quarter − mean of the first quarter
 *   steady     |change| <= max(allowedChange, 5 s sqrt(2/n))     s SD within blocks, n samples in a quarter
 *
 * Throws RangeError for a window or number of readings that is not above 0.
 * Checked: tests/domain/signal/rest/steadiness.spec.ts against NIST StRD NumAcc1 to 4.
 */
export function createSteadinessWatch(options: SteadinessOptions = defaultSteadiness): SteadinessWatch {
  const { windowS, leastReadings, allowedChange } = options
  if (!(windowS > 0)) throw new RangeError('createSteadinessWatch requires a window above 0 s')
  if (!(leastReadings >= 2)) throw new RangeError('createSteadinessWatch requires at least 2 readings')
  const blockS = windowS / mostBlocks
  const count = new Float64Array(mostBlocks)
  const mean = new Float64Array(mostBlocks)
  const squares = new Float64Array(mostBlocks)
  const startS = new Float64Array(mostBlocks)
  let newest = -1
  let used = 0
  let firstS = Number.NaN
  let lastS = Number.NaN

  function reset(): void {
    newest = -1
    used = 0
    firstS = Number.NaN
  }

  function push(timeS: number, force: number): void {
    // A silence as long as the window leaves nothing of it.
    if (used > 0 && timeS - lastS > windowS) reset()
    if (used === 0) firstS = timeS
    lastS = timeS
    if (used === 0 || timeS >= startS[newest]! + blockS) {
      newest = (newest + 1) % mostBlocks
      used = Math.min(mostBlocks, used + 1)
      startS[newest] = timeS
      count[newest] = 0
      mean[newest] = 0
      squares[newest] = 0
    }
    const n = count[newest]! + 1
    const delta = force - mean[newest]!
    count[newest] = n
    mean[newest]! += delta / n
    squares[newest]! += delta * (force - mean[newest]!)
  }

  /** Joins blocks `from` to `to` (0 is the oldest). */
  function joined(from: number, to: number): { n: number; mean: number; squares: number; within: number } {
    let n = 0
    let joinedMean = 0
    let joinedSquares = 0
    let within = 0
    for (let k = from; k < to; k++) {
      const block = (newest - used + 1 + k + 2 * mostBlocks) % mostBlocks
      const m = count[block]!
      const delta = mean[block]! - joinedMean
      joinedMean += (delta * m) / (n + m)
      joinedSquares += squares[block]! + (delta * delta * n * m) / (n + m)
      within += squares[block]!
      n += m
    }
    return { n, mean: joinedMean, squares: joinedSquares, within }
  }

  function judge(): Steadiness {
    const all = joined(0, used)
    const readings = all.n
    if (readings < 2) return { mean: null, sd: null, readings, unsteadyBecause: tooFew(readings) }
    const sd = Math.sqrt(all.squares / (readings - 1))
    return { mean: all.mean, sd, readings, unsteadyBecause: reason(readings) }
  }

  const tooFew = (readings: number) =>
    readings === 0 ? 'there are no readings yet' : `there are too few readings yet (${readings} of ${leastReadings})`

  function reason(readings: number): string | null {
    if (readings < leastReadings) return tooFew(readings)
    if (lastS - firstS < 0.8 * windowS) return 'the signal has not been watched long enough yet'
    const quarter = Math.max(1, Math.floor(used / 4))
    const early = joined(0, quarter)
    const late = joined(used - quarter, used)
    const change = late.mean - early.mean
    const inner = (readings > 2 * used ? joined(0, used).within / (readings - used) : pairVariance()) ** 0.5
    const noiseOfChange = inner * Math.sqrt(1 / early.n + 1 / late.n)
    if (readings > 4 * used && loudestToQuietest() > disturbedRatio)
      return 'something disturbs the signal: more noise in one moment than in another'
    if (Math.abs(change) > Math.max(allowedChange, movedStandardErrors * noiseOfChange))
      return change > 0 ? 'the force is still rising' : 'the force is still falling'
    return null
  }

  /** Half the mean squared difference of neighbouring blocks: free of slow change; for few samples in a block. */
  function pairVariance(): number {
    let sum = 0
    for (let k = 1; k < used; k++) {
      const a = joined(k - 1, k)
      const b = joined(k, k + 1)
      sum += (b.mean - a.mean) ** 2 / (1 / a.n + 1 / b.n)
    }
    return used > 1 ? sum / (used - 1) : 0
  }

  function loudestToQuietest(): number {
    const deviations: number[] = []
    for (let k = 0; k < used; k++) {
      const block = joined(k, k + 1)
      if (block.n >= 4) deviations.push(Math.sqrt(block.within / (block.n - 1)))
    }
    if (deviations.length < 4) return 1
    deviations.sort((a, b) => a - b)
    const middle = deviations[deviations.length >> 1]!
    return middle > 0 ? deviations.at(-1)! / middle : 1
  }

  return { push, judge, reset }
}
