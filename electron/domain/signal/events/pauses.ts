import type { CurveEvent } from '#contract/breaks/evaluation.ts'
import { type CalmCurve, calmCurve, stepNoise, stepShare } from './calmCurve.ts'
import { firstAfter } from './curvePart.ts'
import { levelTimes } from './levelTimes.ts'
import type { LoadedCurve } from './loadedCurve.ts'
import { plainEvent } from './plainEvent.ts'
import { cracked, stands } from './stillness.ts'

/** The load stands still when its slope is below this share of the usual rate. */
const stillShare = 0.5
/** The very start of a pause is left out of its slope: the load may relax. */
const startShare = 0.15
/** Below this share of the peak a loading is still being set up. */
const fromShare = 0.05
/** The usual rate is the median over the steps between these shares of the peak; a pause is in few of them. */
const usualFrom = 0.1
const usualTo = 0.9
const leastSteps = 8
/** A step is slow when it takes so many times as long as usual. */
const slowTimes = 4
/** A pause takes at least this long, s: a hand pump rests for half a second or so between its strokes. */
const leastPauseS = 1.5
/** A held load may relax by this share; one that comes down further was let down. */
const heldShare = 0.1
/** A plateau lies above this share of the peak, never sinks below that one, and takes this share of the loading. */
const plateauShare = 0.9
const sunkShare = 0.85
const plateauTimeShare = 0.03

/**
 * Where the load was not driven on: holds, let-downs and a plateau before the failure.
 *
 *   step     ΔF = max(0.005 P, 3 σ of the means); time t(k) when step k is first reached
 *   slow     t(k+1) − t(k) > 4 ΔF / r       r usual rate, the median of ΔF / (t(k+1) − t(k)) from 0.1 P to 0.9 P
 *   pause    neighbouring slow steps that took 1.5 s at least, after the load was driven faster than that, and in which
 *            nothing cracked
 *   hold     a pause, driven on, in which the load kept 0.9 of what it was; slope below r / 2       reload   it came down further
 *   plateau  a pause above 0.9 P that lasts until the final drop begins, and 0.03 of the time to it at least; slope below r / 2
 *
 * P is the peak above the level at rest. `fallsFromS` is where the final drop begins; null: an unloading, looked at up to its
 * peak, which has no plateau. Thresholds: common practice, no source. Checked: tests/domain/signal/events/pauses.spec.ts,
 * tests/reference/courseCorpus.spec.ts.
 */
export function readPauses(curve: LoadedCurve, fallsFromS: number | null): CurveEvent[] {
  const { zero } = curve
  const load = curve.peak - zero
  // The mean that reaches into the fall tells nothing of a pause.
  const untilS = fallsFromS === null ? curve.peakS : fallsFromS - (curve.samplesPerMean * curve.intervalS) / 2
  const calm = calmCurve(curve, untilS)
  const step = Math.max(stepShare * load, stepNoise * calm.noise)
  const levels: number[] = []
  for (let level = zero + fromShare * load; level < curve.peak; level += step) levels.push(level)
  const reachedS = levelTimes(calm.timeS, calm.force, levels)
  const top = reachedS.findLastIndex((timeS) => !Number.isNaN(timeS))
  const usual = usualStepS(reachedS, levels, zero, load)
  if (usual === null) return []
  const rate = step / usual
  const runs = slowRuns(reachedS, top, slowTimes * usual)
  const events: CurveEvent[] = []
  const plateau =
    fallsFromS === null || curve.clipped ? null : findPlateau(curve, calm, runs, reachedS, top, untilS, rate)
  if (plateau !== null) events.push(plateau)
  // A load that came up as slowly from its onset has not been driven on yet, so it cannot have been held.
  let setUpTo = Number.NEGATIVE_INFINITY
  const slowFromOnset = !(levels[0]! - zero >= (rate / slowTimes) * (reachedS[0]! - curve.onsetS))
  const isSetUp = (first: number) => (first === 0 && slowFromOnset) || first - setUpTo <= 1
  for (const [first, last] of runs) {
    // After the highest step nobody drove on.
    if (last === top || (plateau !== null && reachedS[last]! > plateau.startTimeS)) break
    if (isSetUp(first)) {
      setUpTo = last
      continue
    }
    const event = pauseIn(curve, calm, reachedS[first]!, reachedS[last]!, rate)
    if (event !== null) events.push(event)
  }
  return events
}

/** Neighbouring steps that each took longer than a time: from reaching level `first` to reaching level `last`. */
function slowRuns(reachedS: Float64Array, top: number, longerS: number): [first: number, last: number][] {
  const runs: [number, number][] = []
  for (let k = 0; k < top; k++) {
    if (!(reachedS[k + 1]! - reachedS[k]! > longerS)) continue
    const run = runs.at(-1)
    if (run?.[1] === k) run[1] = k + 1
    else runs.push([k, k + 1])
  }
  return runs
}

/**
 * The plateau up to a time, from the highest step or the slow ones that lead up to it. Noise may lift a creeping load over one
 * step at once; what is joined over such a step must be as slow as a slow step altogether.
 */
function findPlateau(
  curve: LoadedCurve,
  calm: CalmCurve,
  runs: readonly [first: number, last: number][],
  reachedS: Float64Array,
  top: number,
  untilS: number,
  rate: number,
): CurveEvent | null {
  const starts: number[] = [top]
  for (let r = runs.length - 1; r >= 0 && starts[0]! - runs[r]![1] <= 1; r--) starts.unshift(runs[r]![0])
  for (const start of starts) {
    const unbroken = start === top || (start === runs.at(-1)?.[0] && runs.at(-1)?.[1] === top)
    const most = unbroken ? stillShare * rate : rate / slowTimes
    const plateau = plateauFrom(curve, calm, reachedS[start]!, untilS, most, rate)
    if (plateau !== null) return plateau
  }
  return null
}

function usualStepS(reachedS: Float64Array, levels: readonly number[], zero: number, load: number): number | null {
  const stepsS: number[] = []
  for (const [k, level] of levels.entries()) {
    const stepS = reachedS[k + 1]! - reachedS[k]!
    const share = (level - zero) / load
    if (share >= usualFrom && share <= usualTo && !Number.isNaN(stepS)) stepsS.push(stepS)
  }
  if (stepsS.length < leastSteps) return null
  const usual = stepsS.sort((a, b) => a - b)[stepsS.length >> 1]!
  return usual > 0 ? usual : null
}

/** The hold or let-down between two times, the second being when the load went higher than before; null: neither. */
function pauseIn(curve: LoadedCurve, calm: CalmCurve, fromS: number, toS: number, rate: number): CurveEvent | null {
  if (toS - fromS < leastPauseS) return null
  const { timeS, force } = calm
  // A higher step follows, so that there are means after either.
  const from = firstAfter(calm, fromS)
  const to = firstAfter(calm, toS)
  const slack = stepNoise * calm.noise
  let lowest = from
  for (let i = from; i < to; i++) if (force[i]! < force[lowest]!) lowest = i
  let high = force[from]!
  for (let i = from; i <= Math.max(lowest, from + 1); i++) high = Math.max(high, force[i]!)
  if (cracked(curve, fromS, toS, high, force[lowest]!)) return null
  let start = from
  while (start < lowest && force[start]! < high - slack) start += 1
  const held = force[lowest]! + slack - curve.zero >= (1 - heldShare) * (high - curve.zero)
  let end = to
  if (held) while (end > lowest && force[end]! > force[lowest]! + slack) end -= 1
  // A load that creeps up while it is held has its lowest point at the start.
  const crept = held && timeS[end]! - timeS[start]! < leastPauseS
  const startTimeS = crept ? fromS : timeS[start]!
  const endTimeS = crept || !held ? toS : timeS[end]!
  const settledS = startTimeS + startShare * (endTimeS - startTimeS)
  if (held && !stands(curve, settledS, endTimeS, stillShare * rate, rate)) return null
  return pauseEvent(curve, held ? 'hold' : 'reload', startTimeS, endTimeS, high, force[lowest]!)
}

function plateauFrom(
  curve: LoadedCurve,
  calm: CalmCurve,
  fromS: number,
  toS: number,
  most: number,
  rate: number,
): CurveEvent | null {
  const { zero } = curve
  const load = curve.peak - zero
  if (!(toS - fromS >= Math.max(leastPauseS, plateauTimeShare * (toS - curve.onsetS)))) return null
  let lowest = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let i = firstAfter(calm, fromS); i < calm.force.length; i++) {
    lowest = Math.min(lowest, calm.force[i]!)
    high = Math.max(high, calm.force[i]!)
  }
  if (!(high - zero >= plateauShare * load) || !(lowest - zero >= sunkShare * load)) return null
  if (!stands(curve, fromS, toS, most, rate) || cracked(curve, fromS, toS, high, lowest)) return null
  return pauseEvent(curve, 'plateau', fromS, toS, high, lowest)
}

function pauseEvent(
  curve: LoadedCurve,
  kind: 'hold' | 'reload' | 'plateau',
  startTimeS: number,
  endTimeS: number,
  high: number,
  lowest: number,
): CurveEvent {
  const drop = kind === 'plateau' ? null : Math.max(0, high - lowest)
  return {
    ...plainEvent(kind, { startTimeS, endTimeS }),
    dropN: drop,
    dropPercent: drop === null ? null : (100 * drop) / (high - curve.zero),
    fromN: high,
    percentOfPeak: (100 * (high - curve.zero)) / (curve.peak - curve.zero),
  }
}
