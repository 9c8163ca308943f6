import { createColumnRing } from './columnRing.ts'

/** The newest samples of a loading in a ring, with their highest over a sliding time. */
export type RecentSamples = {
  take(timeS: Float64Array, force: Float64Array, from: number, to: number): void
  /** Highest sample of the last `windowS` seconds, the one before the newest always included. */
  windowHighest(windowS: number): number
  /** Samples taken so far; the newest has the ordinal count − 1. */
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

/** 0.4 s at 10 kHz. */
export const recentCapacity = 4096
/** The highest of so many neighbours is kept beside them, so that a search over the window is short. */
const blockLength = 64
const keptBlocks = recentCapacity / blockLength
/** The sample before a longer silence than this says nothing about how fast the load fell, s. */
const longestSilenceS = 1

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
  const ring = createColumnRing(2, recentCapacity)
  const blockHighest = new Float64Array(keptBlocks)
  let count = 0

  const oldestKept = () => count - ring.length()
  const timeAt = (ordinal: number) => ring.at(0, ordinal - oldestKept())
  const forceAt = (ordinal: number) => ring.at(1, ordinal - oldestKept())
  const blockOf = (ordinal: number) => Math.floor(ordinal / blockLength) % keptBlocks

  function take(timeS: Float64Array, force: Float64Array, from: number, to: number): void {
    ring.append([timeS, force], from, to)
    for (let i = from; i < to; ) {
      const within = count % blockLength
      const end = Math.min(to, i + blockLength - within)
      const block = blockOf(count)
      const before = within === 0 ? Number.NEGATIVE_INFINITY : blockHighest[block]!
      blockHighest[block] = highestOf(force, i, end, before)
      count += end - i
      i = end
    }
  }

  function windowHighest(windowS: number): number {
    const newest = count - 1
    const nowS = timeAt(newest)
    const oldest = oldestKept()
    const isWithin = (ordinal: number, spanS: number) => ordinal >= oldest && nowS - timeAt(ordinal) <= spanS
    let highest = forceAt(newest)
    let ordinal = newest - 1
    if (isWithin(ordinal, longestSilenceS)) highest = Math.max(highest, forceAt(ordinal))
    while (isWithin(ordinal, windowS)) {
      const above = ordinal + 1
      // A whole block is taken at once when all of it lies in the window and in memory.
      const isWhole = above % blockLength === 0 && isWithin(above - blockLength, windowS)
      highest = Math.max(highest, isWhole ? blockHighest[blockOf(ordinal)]! : forceAt(ordinal))
      ordinal -= isWhole ? blockLength : 1
    }
    return highest
  }

  function lastAtOrAbove(force: number): number {
    const oldest = oldestKept()
    for (let ordinal = count - 1; ordinal >= oldest; ordinal--) if (forceAt(ordinal) >= force) return ordinal
    return -1
  }

  function meanBefore(ordinal: number, spanS: number, leastSamples: number): number {
    const oldest = oldestKept()
    const endS = timeAt(ordinal)
    let sum = 0
    let samples = 0
    for (let i = ordinal; i >= oldest && (endS - timeAt(i) <= spanS || samples < leastSamples); i--) {
      sum += forceAt(i)
      samples += 1
    }
    return sum / samples
  }

  return {
    take,
    windowHighest,
    count: () => count,
    lastAtOrAbove,
    timeAt,
    forceAt,
    holds: (ordinal) => ordinal >= oldestKept() && ordinal < count,
    meanBefore,
    lineBefore: (ordinal, spanS, leastSamples) =>
      lineThrough({ timeAt, forceAt }, oldestKept(), ordinal, spanS, leastSamples),
  }
}

function highestOf(force: Float64Array, from: number, to: number, before: number): number {
  let highest = before
  for (let i = from; i < to; i++) highest = Math.max(highest, force[i]!)
  return highest
}

function lineThrough(
  { timeAt, forceAt }: Pick<RecentSamples, 'timeAt' | 'forceAt'>,
  oldest: number,
  ordinal: number,
  spanS: number,
  leastSamples: number,
): FittedLine | null {
  const endS = timeAt(ordinal)
  let from = ordinal
  let sumT = 0
  let sumF = 0
  const f0 = forceAt(ordinal)
  for (; from >= oldest; from--) {
    const t = timeAt(from) - endS
    if (t < -spanS && ordinal - from >= leastSamples) break
    sumT += t
    sumF += forceAt(from) - f0
  }
  const n = ordinal - from
  if (n < 3) return null
  let stt = 0
  let stf = 0
  let sff = 0
  for (let i = from + 1; i <= ordinal; i++) {
    const t = timeAt(i) - endS - sumT / n
    const f = forceAt(i) - f0 - sumF / n
    stt += t * t
    stf += t * f
    sff += f * f
  }
  const slope = stf / stt
  const residualSD = Math.sqrt(Math.max(0, sff - slope * stf) / (n - 2))
  return { slope, slopeSE: residualSD / Math.sqrt(stt), residualSD, samples: n }
}
