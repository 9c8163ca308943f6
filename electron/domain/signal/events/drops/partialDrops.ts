import { closeMeans, lowestAhead, meanOf } from '../closeMeans.ts'
import { meansBeforeBreak } from '../curvePart.ts'
import type { LoadedCurve } from '../loadedCurve.ts'
import { type EdgeLevel, edgeLevel } from './edgeLevel.ts'
import { bestStep, type Step, stepOverBend } from './stepFit.ts'

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
const leastNoise = 5
/** ... and standard errors of the difference of the levels before and after. */
const leastErrors = 5.5
/** It falls within this time, s (times are whole microseconds), or between two neighbours; a slower loss is relaxation. */
const fastS = 0.1 + 1e-6
/** The levels before and after are taken over at least this time, s, so that a knock comes to little. */
const levelS = 0.04
/** At least this share of a drop is seen from the points within this time, s, of it alone: a bend of the load is none. */
const seenShare = 0.6
const seenS = 0.03
/** Nor is one that two lines which meet fit nearly as well, by so many variances. */
const leastOverBend = 16
/** The load recovers when half of the drop is made good, by the mean of so many points ... */
const recoveredShare = 0.5
const recoveryMeans = 3
/** ... but not sooner than this, s: what swings back at once is a knock on the bench, not a bond that gave way. */
const leastRecoveryS = 0.035

/** The fall from point i to point j. */
type Fall = { i: number; j: number; before: EdgeLevel; after: EdgeLevel; drop: number; errors: number }
type Falls = {
  /** Whether a fall from a point can be seen at all. */
  seenFrom(i: number): boolean
  /** The drop from one point to another, if there is one. */
  between(i: number, j: number): Fall | null
}

/**
 * Sudden partial drops of a finished loading, up to its break, in order of time. `noise`: SD of its means.
 *
 *   drop       B − A >= max(0.045 L, 0.01 P, 5 σ) and 5.5 standard errors of B − A
 *              B, A   the straight lines before and after (edgeLevel.ts), where the load falls within 0.1 s or between
 *                     neighbours; where either falls, what the load would have lost at that pace anyway
 *                     is no part of the drop
 *              L, P   load just before and peak, above the level at rest, σ noise SD of single samples
 *   seen       the means of 0.03 s on either side differ by at least 0.6 of it
 *   no bend    lines that meet fit worse by 16 variances at least (stepFit.ts)
 *   recovered  the load comes back to B − 0.5 (B − A), 35 ms after the fall at the soonest
 *
 * Of falls that overlap the one with the most standard errors stands, put where two lines fit best.
 * Thresholds: common practice, no source.
 * Checked: tests/domain/signal/events/drops/partialDrops.spec.ts, tests/reference/events.spec.ts.
 */
export function findPartialDrops(curve: LoadedCurve, noise: number): PartialDrop[] {
  const count = meansBeforeBreak(curve)
  const falls = fallsOf(curve, count, noise)
  const drops: PartialDrop[] = []
  for (const seen of strongest(allFalls(curve, count, falls))) {
    const placed = bestStep(curve, stepOf(seen), seen.drop, noise, fastS)
    const fall = falls.between(placed.i, placed.j)
    if (fall === null || stepOverBend(curve, stepOf(fall), noise) < leastOverBend) continue
    const recoveredS = recovery(curve, count, fall)
    if (recoveredS === null) continue
    drops.push(dropOf(curve, fall, recoveredS))
  }
  return drops
}

/** The drop from the last sample before a fall to the first after it, each at the edge of its mean. */
function dropOf({ timeS, samplesPerMean, intervalS }: LoadedCurve, fall: Fall, recoveredS: number): PartialDrop {
  const { i, j, before, after } = fall
  const edgeS = ((samplesPerMean - 1) / 2) * intervalS
  const from = before.level + before.slope * edgeS
  const to = after.level - after.slope * edgeS
  return { startS: timeS[i]! + edgeS, downS: timeS[j]! - edgeS, recoveredS, from, drop: from - to }
}

/** Tells whether the load has dropped from one point to another. Lines are drawn only where a fall is seen. */
function fallsOf(curve: LoadedCurve, count: number, noise: number): Falls {
  const { timeS, zero, peak } = curve
  const close = closeMeans(curve, count, seenS)
  const ahead = lowestAhead(close.after, timeS, count, fastS)
  const leastOfAll = Math.max(leastPeakShare * (peak - zero), leastNoise * curve.noise)
  const lines = { before: new Map<number, EdgeLevel | null>(), after: new Map<number, EdgeLevel | null>() }
  function line(at: number, side: 'before' | 'after'): EdgeLevel | null {
    const known = lines[side].get(at)
    if (known !== undefined) return known
    const drawn = edgeLevel(curve, count, at, side, noise, levelS)
    lines[side].set(at, drawn)
    return drawn
  }

  const leastFrom = (i: number) => Math.max(leastOfAll, leastDropShare * (close.before[i]! - zero))

  function between(i: number, j: number): Fall | null {
    const seen = close.before[i]! - close.after[j]!
    const before = line(i, 'before')
    const after = line(j, 'after')
    if (before === null || after === null) return null
    const falling = Math.min(0, before.slope, after.slope)
    const drop = before.level + falling * (timeS[j]! - timeS[i]!) - after.level
    if (drop < leastFrom(i) || seen < seenShare * drop) return null
    const errors = drop / Math.hypot(before.error, after.error)
    return errors < leastErrors ? null : { i, j, before, after, drop, errors }
  }

  return { seenFrom: (i) => close.before[i]! - ahead[i]! >= seenShare * leastFrom(i), between }
}

/** From every point the fall that stands out most. */
function allFalls({ timeS }: LoadedCurve, count: number, falls: Falls): Fall[] {
  const found: Fall[] = []
  for (const i of Array(count).keys()) {
    if (!falls.seenFrom(i)) continue
    let best: Fall | null = null
    for (let j = i + 1; j < count && (j === i + 1 || timeS[j]! - timeS[i]! <= fastS); j++) {
      const fall = falls.between(i, j)
      if (fall !== null) best = best === null ? fall : stronger(best, fall)
    }
    if (best !== null) found.push(best)
  }
  return found
}

/** The points that the lines of a fall go through. */
const stepOf = ({ i, j, before, after }: Fall): Step => ({
  from: i - before.points + 1,
  i,
  j,
  to: j + after.points,
})

/** Of two falls the one that stands out more, of equal ones the first. */
const stronger = (one: Fall, other: Fall) => (other.errors > one.errors ? other : one)

/** Of falls that overlap the one that stands out most. */
function strongest(falls: readonly Fall[]): Fall[] {
  const kept: Fall[] = []
  for (const fall of falls) {
    const last = kept.at(-1)
    if (last === undefined || fall.i > last.j + 1) kept.push(fall)
    else kept[kept.length - 1] = stronger(last, fall)
  }
  return kept
}

/** When half of a fall was made good; null: never, or so soon that it was a knock. */
function recovery({ timeS, force }: LoadedCurve, count: number, { i, j, before, drop }: Fall): number | null {
  const level = before.level - (1 - recoveredShare) * drop
  for (let k = j; k + recoveryMeans <= count; k++) {
    if (meanOf(force, k, k + recoveryMeans) < level) continue
    const recoveredS = timeS[k + (recoveryMeans >> 1)]!
    return recoveredS - timeS[i]! < leastRecoveryS ? null : recoveredS
  }
  return null
}
