/** The newest samples of a loading in a ring, with their highest over a sliding time. */
export type RecentSamples = {
  push(timeS: number, force: number, windowS: number): void
  /** Highest sample of the last `windowS` seconds, the one before the newest always included. */
  windowHighest(): number
  /** Samples pushed so far; the newest has the ordinal count − 1. */
  count(): number
  /** Last sample, at or before the newest, that lies at or above a force: its ordinal, or −1 when none is in memory. */
  lastAtOrAbove(force: number): number
  timeAt(ordinal: number): number
  forceAt(ordinal: number): number
  /** The ordinal is still in memory. */
  holds(ordinal: number): boolean
  /** Line by least squares through the samples of the last `spanS` seconds up to an ordinal, `leastSamples` at least; null: fewer than three. */
  lineBefore(ordinal: number, spanS: number, leastSamples: number): FittedLine | null
}

/** Slope in force per s, its standard error, and the SD of the residuals (n − 2 degrees of freedom). */
export type FittedLine = { slope: number; slopeSE: number; residualSD: number; samples: number }

/** A power of two; 0.4 s at 10 kHz. */
export const recentCapacity = 4096
const mask = recentCapacity - 1
/** The sample before a longer silence than this says nothing about how fast the load fell, s. */
const longestSilenceS = 1

/**
 * A ring of the newest 4096 samples.
 *
 *   slope = Σ (tᵢ − t̄)(fᵢ − f̄) / Σ (tᵢ − t̄)²      N/s for f in N and t in s, centred before the products are taken
 *   s² = Σ residual² / (n − 2)      SE(slope) = s / sqrt(Σ (tᵢ − t̄)²)
 *
 * The sliding maximum keeps candidates in falling order: O(1) a sample on average.
 * Checked: tests/domain/signal/recentSamples.spec.ts against the slope of JCGM 100 H.3.
 */
export function createRecentSamples(): RecentSamples {
  const times = new Float64Array(recentCapacity)
  const forces = new Float64Array(recentCapacity)
  /** Ordinals of candidates for the maximum, in a ring. */
  const candidates = new Float64Array(recentCapacity)
  const state = { count: 0, first: 0, end: 0 }

  function push(timeS: number, force: number, windowS: number): void {
    const ordinal = state.count
    times[ordinal & mask] = timeS
    forces[ordinal & mask] = force
    state.count = ordinal + 1
    while (state.end > state.first && forces[candidates[(state.end - 1) & mask]! & mask]! <= force) state.end -= 1
    candidates[state.end & mask] = ordinal
    state.end += 1
    for (;;) {
      const oldest = candidates[state.first & mask]!
      const age = timeS - times[oldest & mask]!
      const before = oldest === ordinal - 1 && age <= longestSilenceS
      if (oldest === ordinal || before || (age <= windowS && oldest > ordinal - recentCapacity + 1)) break
      state.first += 1
    }
  }

  const holds = (ordinal: number) => ordinal >= 0 && ordinal < state.count && ordinal >= state.count - recentCapacity

  function lastAtOrAbove(force: number): number {
    const oldest = Math.max(0, state.count - recentCapacity)
    for (let ordinal = state.count - 1; ordinal >= oldest; ordinal--)
      if (forces[ordinal & mask]! >= force) return ordinal
    return -1
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
    windowHighest: () => forces[candidates[state.first & mask]! & mask]!,
    count: () => state.count,
    lastAtOrAbove,
    timeAt: (ordinal) => times[ordinal & mask]!,
    forceAt: (ordinal) => forces[ordinal & mask]!,
    holds,
    lineBefore,
  }
}
