// Held by tests/archive/verify/verify.spec.ts.
import type { SampleBlock } from '#contract/breaks/curve.ts'
import type { Evaluation } from '#contract/breaks/evaluation.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { readEnd, readHeader } from '../breaks/breakHeaders.ts'
import { readBlocks } from '../breaks/curveStore.ts'
import { decisionsOf } from '../breaks/decisions.ts'
import { evaluationsOf } from '../breaks/evaluations.ts'
import type { Database } from '../core/database.ts'
import type { Report } from '../core/fault.ts'
import { prepared } from '../core/prepared.ts'
import { curveSha256 } from '../curves/curveHash.ts'
import { isDerivedHere } from '../lists/derivation.ts'
import { evaluationInForce } from '../lists/inForce.ts'
import { independentForceN } from './independentForce.ts'

export type CurveCount = { curves: number; samples: number }

/** A peak is the force of one stored sample; only the last bits may differ, by the order of the arithmetic. */
const peakTolerance = 1e-9
/** Times are whole microseconds, so half of one tells two samples apart. */
const timeToleranceS = 0.5e-6

/** Decodes the curve of a break and holds it against its recorded checksum, its count, and every peak and sample that names it. */
export function verifyBreak(database: Database, breakId: number, report: Report, count: CurveCount): void {
  const where = `break ${breakId}`
  const end = readEnd(database, breakId)
  const curve = readBlocks(database, end === null ? 'running_block' : 'curve_block', breakId)
  count.curves += 1
  count.samples += curve.timeUs.length
  for (let i = 1; i < curve.timeUs.length; i++)
    if (curve.timeUs[i]! <= curve.timeUs[i - 1]!) {
      report({ where, what: `the times of its curve do not rise at sample ${i + 1}` })
      break
    }
  // A capture that runs has no checksum yet.
  if (end === null) return
  if (end.samples !== curve.timeUs.length)
    report({ where, what: `its curve has ${curve.timeUs.length} samples, recorded are ${end.samples}` })
  if (curveSha256(curve) !== end.curveSha256) report({ where, what: 'its curve does not match the recorded SHA-256' })
  const left = prepared(database, 'SELECT 1 FROM running_block WHERE break_id = ? LIMIT 1').get(breakId)
  if (left !== undefined) report({ where, what: 'samples of the running capture are left beside the sealed curve' })
  const { readingUnit } = readHeader(database, breakId)
  const evaluations = evaluationsOf(database, breakId)
  for (const made of evaluations) {
    const difference = peakDifference(curve, made, readingUnit)
    if (difference !== null) report({ where: `evaluation ${made.evaluationId} of break ${breakId}`, what: difference })
  }
  for (const { decisionId, sample } of decisionsOf(database, breakId))
    if (sample !== null && curve.readings[sampleAt(curve, sample.timeS)] !== sample.reading)
      report({
        where: `decision ${decisionId} on break ${breakId}`,
        what: `its sample at ${sample.timeS} s is none of the curve`,
      })
  const inForceId = evaluationInForce(database, breakId)
  const inForce = evaluations.find(({ evaluationId }) => evaluationId === inForceId)
  if (inForce !== undefined) verifyOverruled(database, breakId, inForce, readingUnit, report)
}

/** The place of the sample at that time; -1: there is none. */
function sampleAt(curve: SampleBlock, timeS: number): number {
  return curve.timeUs.findIndex((timeUs) => Math.abs(timeUs / 1e6 - timeS) < timeToleranceS)
}

/** Holds the load that lists show for an overruled peak against the sample that a person named, where this program derived it. */
function verifyOverruled(
  database: Database,
  breakId: number,
  made: Evaluation,
  unit: ReadingUnit,
  report: Report,
): void {
  if (!isDerivedHere(database)) return
  const row = prepared<{ peak_n: number | null; sample_reading: number }>(
    database,
    `SELECT b.peak_n, d.sample_reading FROM break_current b JOIN decision d ON d.decision_id = b.peak_decision_id
     WHERE b.break_id = ?`,
  ).get(breakId)
  if (row === undefined) return
  const force = independentForceN(row.sample_reading, made.scale, unit)
  const peakN = force === null ? null : force - made.tareOffset
  if (peakN === null ? row.peak_n === null : row.peak_n !== null && near(row.peak_n, peakN, made.tareOffset)) return
  report({ where: `break ${breakId}`, what: `its load of ${row.peak_n} N is not that of the sample named, ${peakN} N` })
}

function near(stored: number, computed: number, tareOffset: number): boolean {
  const scale = Math.max(Math.abs(computed + tareOffset), Math.abs(tareOffset), Math.abs(stored))
  return Math.abs(computed - stored) <= peakTolerance * scale
}

/** Says how the stored peak disagrees with the curve; null when it agrees or there is none. */
function peakDifference(curve: SampleBlock, made: Evaluation, unit: ReadingUnit): string | null {
  const { peakN, peakTimeS } = made.result
  if (peakN === null || peakTimeS === null) return null
  const index = sampleAt(curve, peakTimeS)
  if (index < 0) return `its peak at ${peakTimeS} s is no sample of the curve`
  const force = independentForceN(curve.readings[index]!, made.scale, unit)
  if (force === null) return 'it has a peak in newtons, but no scale that could have made it'
  const tared = force - made.tareOffset
  return near(peakN, tared, made.tareOffset)
    ? null
    : `its peak of ${peakN} N is not the force at ${peakTimeS} s, which is ${tared} N`
}
