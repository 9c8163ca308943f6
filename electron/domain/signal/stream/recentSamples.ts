/** The newest samples of a loading in a ring, with their highest over a sliding time. */
export type RecentSamples = {
  push(timeS: number, force: number): void
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): void
  /** Highest sample of the last `windowS` seconds, the one before the newest always included. */
  windowHighest(windowS: number): number
  /** Samples pushed so far; the newest has the ordinal count − 1. */
  count(): number
  /** Last sample, at or before the newest, that lies at or above a force: its ordinal, or −1 when none is in memory. */
  lastAtOrAbove(force: number): number
  timeAt(ordinal: number): number
  forceAt(ordinal: number): number
  /** The ordinal is still in memory. */
  holds(ordinal: number): boolean
  /** Mean of the samples of the last `spanS` seconds up to an ordinal, `leastSamples` where there are. */
  meanBefore(ordinal: number, spanS: number, leastSamples: number): number
  /** Line by least squares through the samples of the last `spanS` seconds up to an ordinal, `leastSamples` at least; null: fewer than three. */
  lineBefore(ordinal: number, spanS: number, leastSamples: number): FittedLine | null
}

/** Slope in force per s, its standard error, and the SD of the residuals (n − 2 degrees of freedom). */
export type FittedLine = { slope: number; slopeSE: number; residualSD: number; samples: number }

/** A power of two; 0.4 s at 10 kHz. */
export const recentCapacity = 4096
const mask = recentCapacity - 1
/** The highest of so many neighbours is kept beside them, so that a search over the window is short. */
const blockLength = 64
/** The sample before a longer silence than this says nothing about how fast the load fell, s. */
const longestSilenceS = 1

type State = ReturnType<typeof emptyRing>
const emptyRing = () => ({
  times: new Float64Array(recentCapacity),
  forces: new Float64Array(recentCapacity),
  blockHighest: new Float64Array(recentCapacity / blockLength),
  count: 0,
})

/**
 * A ring of the newest 4096 samples.
 *
 *   slope = Σ (tᵢ − t̄)(fᵢ − f̄) / Σ (tᵢ − t̄)²      N/s for f in N and t in s, centred before the products are taken
 *   s² = Σ residual² / (n − 2)      SE(slope) = s / sqrt(Σ (tᵢ − t̄)²)
 *
 * The maximum is searched only when asked for, block by block.
 * Checked: tests/domain/signal/stream/recentSamples.spec.ts against the slope of JCGM 100 H.3.
 */
export function createRecentSamples(): RecentSamples {
  const state = emptyRing()
  const { times, forces, blockHighest } = state

  function push(timeS: number, force: number): void {
    const ordinal = state.count
    const at = ordinal & mask
    times[at] = timeS
    forces[at] = force
    const block = at >> 6
    if ((at & (blockLength - 1)) === 0 || force > blockHighest[block]!) blockHighest[block] = force
    state.count = ordinal + 1
  }

  function windowHighest(windowS: number): number {
    const newest = state.count - 1
    const nowS = times[newest & mask]!
    const oldest = Math.max(0, state.count - recentCapacity)
    let highest = forces[newest & mask]!
    let ordinal = newest - 1
    if (ordinal >= oldest && nowS - times[ordinal & mask]! <= longestSilenceS)
      highest = Math.max(highest, forces[ordinal & mask]!)
    while (ordinal >= oldest && nowS - times[ordinal & mask]! <= windowS) {
      const start = ordinal - blockLength + 1
      // A whole block is taken at once when all of it lies in the window and in memory.
      if ((start & (blockLength - 1)) === 0 && start >= oldest && nowS - times[start & mask]! <= windowS) {
        highest = Math.max(highest, blockHighest[(start & mask) >> 6]!)
        ordinal = start - 1
      } else {
        highest = Math.max(highest, forces[ordinal & mask]!)
        ordinal -= 1
      }
    }
    return highest
  }

  const holds = (ordinal: number) => ordinal >= 0 && ordinal < state.count && ordinal >= state.count - recentCapacity

  function lastAtOrAbove(force: number): number {
    const oldest = Math.max(0, state.count - recentCapacity)
    for (let ordinal = state.count - 1; ordinal >= oldest; ordinal--)
      if (forces[ordinal & mask]! >= force) return ordinal
    return -1
  }

  function meanBefore(ordinal: number, spanS: number, leastSamples: number): number {
    const oldest = Math.max(0, state.count - recentCapacity)
    const endS = times[ordinal & mask]!
    let sum = 0
    let samples = 0
    for (let i = ordinal; i >= oldest && (endS - times[i & mask]! <= spanS || samples < leastSamples); i--) {
      sum += forces[i & mask]!
      samples += 1
    }
    return sum / samples
  }

  function lineBefore(ordinal: number, spanS: number, leastSamples: number): FittedLine | null {
    const oldest = Math.max(0, state.count - recentCapacity)
    const endS = times[ordinal & mask]!
    let from = ordinal
    let sumT = 0
    let sumF = 0
    const f0 = forces[ordinal & mask]!
    for (; from >= oldest; from--) {
      const t = times[from & mask]! - endS
      if (t < -spanS && ordinal - from >= leastSamples) break
      sumT += t
      sumF += forces[from & mask]! - f0
    }
    const n = ordinal - from
    if (n < 3) return null
    let stt = 0
    let stf = 0
    let sff = 0
    for (let i = from + 1; i <= ordinal; i++) {
      const t = times[i & mask]! - endS - sumT / n
      const f = forces[i & mask]! - f0 - sumF / n
      stt += t * t
      stf += t * f
      sff += f * f
    }
    const slope = stf / stt
    const residualSD = Math.sqrt(Math.max(0, sff - slope * stf) / (n - 2))
    return { slope, slopeSE: residualSD / Math.sqrt(stt), residualSD, samples: n }
  }

  return {
    push,
    take: (timeS, force, from, to) => takeAll(state, timeS, force, from, to),
    windowHighest,
    count: () => state.count,
    lastAtOrAbove,
    timeAt: (ordinal) => times[ordinal & mask]!,
    forceAt: (ordinal) => forces[ordinal & mask]!,
    holds,
    meanBefore,
    lineBefore,
  }
}

/** Outside the closure, so that the compiler keeps one loop for all rings. */
function takeAll(state: State, timeS: Float64Array, force: Float64Array, from: number, to: number): void {
  const { times, forces, blockHighest } = state
  let { count } = state
  let highest = blockHighest[(count & mask) >> 6]!
  for (let i = from; i < to; i++) {
    const value = force[i]!
    const at = count & mask
    times[at] = timeS[i]!
    forces[at] = value
    if ((at & (blockLength - 1)) === 0 || value > highest) {
      highest = value
      blockHighest[at >> 6] = value
    }
    count += 1
  }
  state.count = count
}
