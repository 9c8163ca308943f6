import { meansBeforeBreak } from './curvePart.ts'
import { type EdgeLevels, edgeLevels } from './edgeLevels.ts'
import type { LoadedCurve } from './loadedCurve.ts'
import { noiseOfMeans } from './noiseOfMeans.ts'
import { bestSplit } from './stepFit.ts'

/** A sudden fall of the load from which it recovered. Forces as pushed, times in s. */
export type PartialDrop = {
  /** The last that was seen of the load before it fell, and the first after. */
  startS: number
  downS: number
  /** When half of it was made good. */
  recoveredS: number
  /** Load before, and how far it fell. */
  from: number
  drop: number
}

/** A drop is at least this share of the load that it falls from ... */
const leastDropShare = 0.045
/** ... this share of the peak ... */
const leastPeakShare = 0.01
/** ... so many noise SDs of single samples ... */
const leastNoise = 4
/** ... and standard errors of the difference of the levels before and after. */
const leastErrors = 5
/** It falls within this time, s, or between two neighbours; a slower loss is relaxation. */
const fastS = 0.1
/** The levels before and after are taken over at least this time, s, so that a knock comes to little. */
const levelS = 0.04
/** At least this share of a drop is seen from the points within this time, s, of it alone: a bend of the load is none. */
const seenShare = 0.5
const seenS = 0.03
/** The load recovers when half of the drop is made good, by the mean of so many points ... */
const recoveredShare = 0.5
const recoveryMeans = 3
/** ... but not sooner than this, s: what swings back at once is a knock on the bench, not a bond that gave way. */
const leastRecoveryS = 0.035

/** The fall from point i to point j. */
type Fall = { i: number; j: number; from: number; drop: number; errors: number }

/**
 * Sudden partial drops of a finished loading, up to its break, in order of time.
 *
 *   drop       B − A >= max(0.045 L, 0.01 P, 4 σ) and 5 standard errors of B − A
 *              B, A   the straight lines before and after (edgeLevels.ts), where the load falls within 0.1 s or between
 *                     neighbours; a B that falls is followed to the place of A
 *              L      B above the level at rest, P peak above it, σ noise of single samples
 *   seen       the means of 0.03 s on either side differ by at least half of it
 *   recovered  the load comes back to B − 0.5 (B − A), 35 ms after the fall at the soonest
 *
 * Of falls that overlap the one with the most standard errors stands, put where two lines fit best (stepFit.ts). A share
 * of the load, a share of the peak: common practice, no source; how well a step shows in noise: normal theory.
 * Checked: tests/domain/signal/events/partialDrops.spec.ts, tests/reference/events.spec.ts.
 */
export function findPartialDrops(curve: LoadedCurve): PartialDrop[] {
  const count = meansBeforeBreak(curve)
  const noise = noiseOfMeans(curve, count)
  const before = edgeLevels(curve, count, 'before', noise, levelS)
  const after = edgeLevels(curve, count, 'after', noise, levelS)
  const fallAt = (i: number, j: number) => fallBetween(curve, count, before, after, i, j)
  const drops: PartialDrop[] = []
  for (const { i, j } of strongest(allFalls(curve, count, fallAt))) {
    const placed = bestSplit(curve, i - before.points[i]! + 1, i, j, j + after.points[j]!, noise)
    const fall = fallAt(placed.i, placed.j)
    const recoveredS = fall === null ? null : recovery(curve, count, fall)
    if (fall === null || recoveredS === null) continue
    const startS = curve.timeS[fall.i]!
    drops.push({ startS, downS: curve.timeS[fall.j]!, recoveredS, from: fall.from, drop: fall.drop })
  }
  return drops
}

/** From every point the fall that stands out most. */
function allFalls(curve: LoadedCurve, count: number, fallAt: (i: number, j: number) => Fall | null): Fall[] {
  const { timeS } = curve
  const found: Fall[] = []
  for (let i = 1; i < count - 2; i++) {
    let best: Fall | null = null
    for (let j = i + 1; j < count - 1 && (j === i + 1 || timeS[j]! - timeS[i]! <= fastS); j++) {
      const fall = fallAt(i, j)
      if (fall !== null && (best === null || fall.errors > best.errors)) best = fall
    }
    if (best !== null) found.push(best)
  }
  return found
}

function fallBetween(
  curve: LoadedCurve,
  count: number,
  before: EdgeLevels,
  after: EdgeLevels,
  i: number,
  j: number,
): Fall | null {
  const { timeS, zero, noise, peak } = curve
  const from = before.level[i]!
  const drop = from + Math.min(0, before.slope[i]!) * (timeS[j]! - timeS[i]!) - after.level[j]!
  if (!(drop >= Math.max(leastDropShare * (from - zero), leastPeakShare * (peak - zero), leastNoise * noise)))
    return null
  const errors = drop / Math.hypot(before.error[i]!, after.error[j]!)
  if (errors < leastErrors || seenFall(curve, count, i, j) < seenShare * drop) return null
  return { i, j, from, drop, errors }
}

/** The fall without any line: from the mean of what is close before it to the mean of what is close after. */
function seenFall({ timeS, force }: LoadedCurve, count: number, i: number, j: number): number {
  let first = i
  while (first > 0 && timeS[i]! - timeS[first - 1]! < seenS) first -= 1
  let end = j + 1
  while (end < count && timeS[end]! - timeS[j]! < seenS) end += 1
  return meanOf(force, first, i + 1) - meanOf(force, j, end)
}

function meanOf(force: Float64Array, from: number, to: number): number {
  let sum = 0
  for (let k = from; k < to; k++) sum += force[k]!
  return sum / (to - from)
}

/** Of falls that overlap the one that stands out most. */
function strongest(falls: readonly Fall[]): Fall[] {
  const kept: Fall[] = []
  for (const fall of falls) {
    const last = kept.at(-1)
    if (last === undefined || fall.i > last.j + 1) kept.push(fall)
    else if (fall.errors > last.errors) kept[kept.length - 1] = fall
  }
  return kept
}

/** When half of a fall was made good; null: never, or so soon that it was a knock. */
function recovery({ timeS, force }: LoadedCurve, count: number, { i, j, from, drop }: Fall): number | null {
  const level = from - (1 - recoveredShare) * drop
  for (let k = j; k + recoveryMeans <= count; k++) {
    if (meanOf(force, k, k + recoveryMeans) < level) continue
    const recoveredS = timeS[k + (recoveryMeans >> 1)]!
    return recoveredS - timeS[i]! < leastRecoveryS ? null : recoveredS
  }
  return null
}
