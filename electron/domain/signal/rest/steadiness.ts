import { createSignalBlocks, type SignalBlocks } from './signalBlocks.ts'

/** What the newest stretch of signal is worth as a zero. */
export type Steadiness = {
  /** Mean, sample SD and number of the samples in the window; null while there are fewer than two. */
  mean: number | null
  sd: number | null
  readings: number
  /** How far the signal went to and fro within the window, beyond what its noise explains; null: not known yet. */
  swing: number | null
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

/** A mean that changed by more than so many of its own standard errors has truly moved. */
const movedStandardErrors = 5
/** A block this many standard errors from the mean of the window is off by more than noise. */
const swungStandardErrors = 5
/** Noise of one block against the quietest one: more than this is a disturbance (knock, hand on the bench). */
const disturbedRatio = 4

/**
 * A watch over the last `windowS` seconds, kept as up to 16 blocks of equal length with count, mean and sum of squares each.
 *
 *   mean, SD   of all samples in the window (Chan, Golub and LeVeque's pairwise update, so a large offset does no harm)
 *   change     mean of the last quarter − mean of the first quarter
 *   steady     |change| <= max(allowedChange, 5 s sqrt(2/n))     s SD within blocks, n samples in a quarter
 *   swing      largest |mean of a block − mean| − 5 s / sqrt(m)  m samples in the block; 0 at least
 *
 * Throws RangeError for a window or number of readings that is not above 0.
 * Checked: tests/domain/signal/rest/steadiness.spec.ts against NIST StRD NumAcc1 to 4.
 */
export function createSteadinessWatch(options: SteadinessOptions = defaultSteadiness): SteadinessWatch {
  const { windowS, leastReadings, allowedChange } = options
  if (!(windowS > 0)) throw new RangeError('createSteadinessWatch requires a window above 0 s')
  if (!(leastReadings >= 2)) throw new RangeError('createSteadinessWatch requires at least 2 readings')
  const blocks = createSignalBlocks(windowS)

  function judge(): Steadiness {
    const all = blocks.joined(0, blocks.used())
    const readings = all.n
    if (readings < 2) return { mean: null, sd: null, readings, swing: null, unsteadyBecause: tooFew(readings) }
    const sd = Math.sqrt(all.squares / (readings - 1))
    const { mean } = all
    return { mean, sd, readings, swing: swingAbout(mean, noiseVariance(readings)), unsteadyBecause: reason(readings) }
  }

  /** Of single samples, free of slow change. */
  function noiseVariance(readings: number): number {
    const used = blocks.used()
    return readings > 2 * used ? blocks.joined(0, used).within / (readings - used) : pairVariance(blocks)
  }

  function swingAbout(mean: number, variance: number): number {
    let swing = 0
    for (let k = 0; k < blocks.used(); k++) {
      const block = blocks.joined(k, k + 1)
      swing = Math.max(swing, Math.abs(block.mean - mean) - swungStandardErrors * Math.sqrt(variance / block.n))
    }
    return swing
  }

  const tooFew = (readings: number) =>
    readings === 0 ? 'there are no readings yet' : `there are too few readings yet (${readings} of ${leastReadings})`

  function reason(readings: number): string | null {
    if (readings < leastReadings) return tooFew(readings)
    if (blocks.watchedS() < 0.8 * windowS) return 'the signal has not been watched long enough yet'
    const used = blocks.used()
    const quarter = Math.max(1, Math.floor(used / 4))
    const early = blocks.joined(0, quarter)
    const late = blocks.joined(used - quarter, used)
    const change = late.mean - early.mean
    const noiseOfChange = noiseVariance(readings) ** 0.5 * Math.sqrt(1 / early.n + 1 / late.n)
    if (readings > 4 * used && isDisturbed(blocks))
      return 'something disturbs the signal: more noise in one moment than in another'
    if (Math.abs(change) > Math.max(allowedChange, movedStandardErrors * noiseOfChange))
      return change > 0 ? 'the force is still rising' : 'the force is still falling'
    return null
  }

  return { push: blocks.push, judge, reset: blocks.reset }
}

/** Half the mean squared difference of neighbouring blocks: free of slow change; for few samples in a block. */
function pairVariance(blocks: SignalBlocks): number {
  const used = blocks.used()
  let sum = 0
  for (let k = 1; k < used; k++) {
    const a = blocks.joined(k - 1, k)
    const b = blocks.joined(k, k + 1)
    sum += (b.mean - a.mean) ** 2 / (1 / a.n + 1 / b.n)
  }
  return used > 1 ? sum / (used - 1) : 0
}

/** One block is far noisier than the middle one. */
function isDisturbed(blocks: SignalBlocks): boolean {
  const deviations: number[] = []
  for (let k = 0; k < blocks.used(); k++) {
    const block = blocks.joined(k, k + 1)
    if (block.n >= 4) deviations.push(Math.sqrt(block.within / (block.n - 1)))
  }
  deviations.sort((a, b) => a - b)
  const middle = deviations[deviations.length >> 1]!
  return deviations.length >= 4 && middle > 0 && deviations.at(-1)! > disturbedRatio * middle
}
