import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { firstAfter } from '../curvePart.ts'
import type { LoadedCurve } from '../loadedCurve.ts'
import { plainEvent } from '../plainEvent.ts'

/** Going back from the break, a load this much below the highest passed (share of it, noise SDs of the means) was on its way up. */
const risingShare = 0.045
const risingNoise = 6
/** The drop begins where the load was last within this share of the whole fall. */
const beginShare = 0.05
/** A fall is down when this share of it is left. */
const downShare = 0.1
/** A joint that lets go at once is down within this time, s. A crack takes milliseconds, the frame swings back in some more. */
const mostBrittleS = 0.04
/** Samples further apart than this, s, cannot show that ... */
const farApartS = 0.02
/** ... but a fall over more than so many intervals was none of that in any case. */
const certainIntervals = 2.5

/**
 * The fall of the failure: from the highest load that it came down from without a recovery, to the load after the break.
 *
 *   starts    where the load was last within 0.05 of the fall below its highest
 *   ends      where 0.1 of the fall is left
 *   brittle   within 40 ms        progressive   longer: in steps, or slowly
 *
 * `manner` is null where samples are more than 20 ms apart during the fall, or some are missing, unless it took more than 2.5
 * such intervals. null: no break.
 * Thresholds: common practice, no source. Checked: tests/domain/signal/events/drops/finalDrop.spec.ts,
 * tests/reference/courseCorpus.spec.ts.
 */
export function readFinalDrop(curve: LoadedCurve): CurveEvent | null {
  const { timeS, force, zero, breakS, afterBreak, samplesPerMean } = curve
  if (breakS === null || afterBreak === null) return null
  const last = firstAfter(curve, breakS) - 1
  if (last < 0) return null
  const noise = (risingNoise * curve.noise) / Math.sqrt(samplesPerMean)
  let highest = last
  for (let i = last; i >= 0; i--) {
    if (force[i]! > force[highest]!) highest = i
    const high = force[highest]!
    if (high - force[i]! > Math.max(risingShare * (high - zero), noise)) break
  }
  const from = force[highest]!
  const drop = from - afterBreak
  if (!(drop > 0) || !(from > zero)) return null
  let begin = last
  while (begin > highest && force[begin]! < from - beginShare * drop) begin -= 1
  // The last mean before the break reaches up to it: then the break, known to a sample, is the start.
  const startTimeS = begin >= last - 1 ? breakS : timeS[begin]!
  const endTimeS = breakS + (curve.fallS ?? fallOfMeans(curve, last, afterBreak + downShare * drop))
  const lengthS = endTimeS - startTimeS
  const apartS = widestStep(curve, begin, endTimeS)
  const tooFar = apartS > farApartS && lengthS <= certainIntervals * apartS
  return {
    ...plainEvent('final-drop', { startTimeS, endTimeS }),
    dropN: drop,
    dropPercent: (100 * drop) / (from - zero),
    fromN: from,
    percentOfPeak: (100 * (from - zero)) / (curve.peak - zero),
    manner: tooFar ? null : lengthS <= mostBrittleS ? 'brittle' : 'progressive',
  }
}

/** The longest time without a sample during a fall, s: the usual interval, or a gap. */
function widestStep({ timeS, samplesPerMean, intervalS }: LoadedCurve, from: number, toS: number): number {
  let widestS = intervalS
  for (let i = from; i + 1 < timeS.length && timeS[i]! < toS; i++)
    widestS = Math.max(widestS, timeS[i + 1]! - timeS[i]! - (samplesPerMean - 1) * intervalS)
  return widestS
}

function fallOfMeans({ timeS, force, breakS }: LoadedCurve, from: number, level: number): number {
  for (let i = from; i < force.length; i++) if (timeS[i]! > breakS! && force[i]! <= level) return timeS[i]! - breakS!
  return 0
}
