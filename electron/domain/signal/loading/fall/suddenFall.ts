/** Follows how far a load has come down in sudden steps. Constant memory. */
export type SuddenFall = {
  push(timeS: number, mean: number): void
  /** How far the load has come down in sudden steps since it last stood near its highest. */
  fallen(): number
}

/** The steps are forgotten when the load is back at this share of its highest. */
const madeGoodShare = 0.98
/** A step between two means is sudden when it is so many times the highest load in a second (an opened valve lets go slower) ... */
const suddenPerS = 2.5
/** ... and at least this share of it ... */
const suddenShare = 0.02
/** ... and so many noise SDs of the means. */
const suddenNoise = 8

/**
 * Adds up the sudden steps of a load, judged by means of so many samples each:
 *
 *   sudden   |step| >= max(0.02 P, 2.5 P per second, 8 σ / sqrt(n))      P highest load so far, σ noise SD of single samples
 *
 * Sudden rises count against sudden falls, so that ringing comes to nothing. Checked: tests/domain/signal/loading/fall/suddenFall.spec.ts.
 */
export function createSuddenFall(options: { zero: number; noise: number; samplesPerMean: number }): SuddenFall {
  const { zero } = options
  const noiseLimit = (suddenNoise * options.noise) / Math.sqrt(options.samplesPerMean)
  const state = { highest: Number.NEGATIVE_INFINITY, fallen: 0, lastS: 0, lastMean: Number.NaN }

  return {
    push(timeS, mean) {
      if (mean > state.highest) state.highest = mean
      const load = state.highest - zero
      const fall = state.lastMean - mean
      const least = Math.max(noiseLimit, suddenShare * load, suddenPerS * load * (timeS - state.lastS))
      if (mean - zero >= madeGoodShare * load) state.fallen = 0
      else if (Math.abs(fall) >= least) state.fallen = Math.max(0, state.fallen + fall)
      state.lastS = timeS
      state.lastMean = mean
    },
    fallen: () => state.fallen,
  }
}
