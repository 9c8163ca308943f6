import type { BreakRecord } from '#contract/breaks/break.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import type { PickedSample } from '#contract/breaks/decision.ts'
import type { Evaluation } from '#contract/breaks/evaluation.ts'
import { Trouble } from '#contract/errors.ts'
import { taredForce } from '../calibration/scale/forceScale.ts'
import { firstEarlyDrop, prematureIndex } from '../signal/events/prematureLoad.ts'
import { noResultYet, stillCaptured } from './breakTroubles.ts'
import { resultInForce } from './resultInForce.ts'

type Judged = Pick<BreakRecord, 'header' | 'end' | 'evaluations' | 'inForceId'>

/** The result of a finished break that a person may overrule. Throws Trouble `conflict` while there is none. */
export function overrulable(record: Judged): Evaluation {
  const { breakId } = record.header
  if (record.end === null) throw stillCaptured(breakId)
  const result = resultInForce(record)
  if (result === null) throw noResultYet(breakId)
  return result
}

/** The raw sample nearest to a time (the earlier of two). Throws Trouble `invalid-input` for a time outside the curve. */
export function pickedSample(record: Judged, { timeS, readings }: RawCurve, wantedS: number): PickedSample {
  overrulable(record)
  const last = timeS.length - 1
  if (last < 0 || wantedS < timeS[0]! || wantedS > timeS[last]!)
    throw new Trouble(
      'invalid-input',
      last < 0
        ? `Break ${record.header.breakId} has no samples.`
        : `The time ${wantedS} s lies outside the curve, which goes from ${timeS[0]} s to ${timeS[last]} s.`,
      'Pick a point on the curve.',
    )
  const after = timeS.findIndex((time) => time >= wantedS)
  const before = Math.max(0, after - 1)
  const nearest = wantedS - timeS[before]! <= timeS[after]! - wantedS ? before : after
  return { timeS: timeS[nearest]!, reading: readings[nearest]! }
}

/**
 * The highest raw sample before the first early drop that the result in force found: the load at which the bond gave way
 * for the first time (prematureLoad.ts, as the page shows it beforehand). Throws Trouble `conflict` when it found none.
 */
export function prematureSample(record: Judged, { timeS, readings }: RawCurve): PickedSample {
  const made = overrulable(record)
  const { events } = made.result
  const drop = firstEarlyDrop(events)
  if (drop === null)
    throw new Trouble(
      'conflict',
      `No early drop was found on the curve of break ${record.header.breakId}.`,
      'Pick the peak by hand, at the load where the bond failed.',
    )
  const { force } = taredForce(readings, made.scale, record.header.readingUnit, made.tareOffset)
  const highest = prematureIndex(events, timeS, force)
  if (highest < 0)
    throw new Trouble(
      'conflict',
      `The early drop of break ${record.header.breakId} at ${drop.startTimeS} s holds no sample of its curve.`,
      'Evaluate the break again, or pick the peak by hand.',
    )
  return { timeS: timeS[highest]!, reading: readings[highest]! }
}
