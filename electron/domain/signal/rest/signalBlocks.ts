/** Some neighbouring blocks taken together: number and mean of their samples, sum of squares about that mean and about their own. */
export type JoinedBlocks = { n: number; mean: number; squares: number; within: number }

/** The newest stretch of a signal as blocks of equal length, each with count, mean and sum of squares. */
export type SignalBlocks = {
  push(timeS: number, force: number): void
  /** Blocks `from` to before `to`; 0 is the oldest. */
  joined(from: number, to: number): JoinedBlocks
  /** How many blocks there are. */
  used(): number
  /** From the first sample to the newest, s, blocks that have gone out included. NaN before the first. */
  watchedS(): number
  reset(): void
}

const mostBlocks = 16

/**
 * The last `windowS` seconds in up to 16 blocks, in constant memory.
 *
 *   mean, sum of squares of joined blocks by Chan, Golub and LeVeque's pairwise update, so a large offset does no harm
 *
 * Checked: tests/domain/signal/rest/signalBlocks.spec.ts, tests/domain/signal/rest/steadiness.spec.ts against NIST StRD NumAcc1 to 4.
 */
export function createSignalBlocks(windowS: number): SignalBlocks {
  const blockS = windowS / mostBlocks
  const count = new Float64Array(mostBlocks)
  const mean = new Float64Array(mostBlocks)
  const squares = new Float64Array(mostBlocks)
  const startS = new Float64Array(mostBlocks)
  /** Where the newest block stands in the ring. */
  let newest = 0
  let used = 0
  let firstS = Number.NaN
  let lastS = Number.NaN

  function reset(): void {
    used = 0
    firstS = Number.NaN
  }

  function begin(timeS: number, force: number): void {
    newest = (newest + 1) % mostBlocks
    used = Math.min(mostBlocks, used + 1)
    startS[newest] = timeS
    count[newest] = 0
    mean[newest] = force
    squares[newest] = 0
  }

  return {
    push(timeS, force) {
      // A silence as long as the window leaves nothing of it.
      if (timeS - lastS > windowS) reset()
      if (used === 0) firstS = timeS
      lastS = timeS
      if (used === 0 || timeS >= startS[newest]! + blockS) begin(timeS, force)
      const n = count[newest]! + 1
      const delta = force - mean[newest]!
      count[newest] = n
      mean[newest]! += delta / n
      squares[newest]! += delta * (force - mean[newest]!)
    },
    joined(from, to) {
      const joined = { n: 0, mean: 0, squares: 0, within: 0 }
      for (let k = from; k < to; k++) {
        const block = (newest - used + 1 + k + mostBlocks) % mostBlocks
        const m = count[block]!
        const { n } = joined
        const delta = mean[block]! - joined.mean
        joined.mean += (delta * m) / (n + m)
        joined.squares += squares[block]! + (delta * delta * n * m) / (n + m)
        joined.within += squares[block]!
        joined.n += m
      }
      return joined
    },
    used: () => used,
    watchedS: () => lastS - firstS,
    reset,
  }
}
