import type Database from 'better-sqlite3'
import type { SampleBlock } from '#contract/records/break.ts'
import type { Evaluation } from '#contract/records/evaluation.ts'
import type { ReadingUnit } from '#contract/records/force.ts'
import { readEnd, readHeader } from './breakHeaders.ts'
import { curveSha256 } from './curves/curveHash.ts'
import { readBlocks } from './curves/curveStore.ts'
import { evaluationsOf } from './evaluations.ts'
import type { Report } from './fault.ts'
import { prepared } from './prepared.ts'
import { forceOfReading } from './storedForce.ts'

export type CurveCount = { curves: number; samples: number }

/** A peak is the force of one stored sample; only the last bits may differ, by the order of the arithmetic. */
const peakTolerance = 1e-9
/** Times are whole microseconds, so half of one tells two samples apart. */
const timeToleranceS = 0.5e-6

/** Decodes the curve of a break and holds it against its recorded checksum, count and peak. */
export function verifyBreak(database: Database.Database, breakId: number, report: Report, count: CurveCount): void {
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
  const inForce = evaluationsOf(database, breakId).at(-1)
  if (inForce === undefined) return
  const difference = peakDifference(curve, inForce, readHeader(database, breakId).readingUnit)
  if (difference !== null) report({ where: `evaluation ${inForce.evaluationId} of break ${breakId}`, what: difference })
}

/** Says how the stored peak disagrees with the curve; null when it agrees or there is none. */
function peakDifference(curve: SampleBlock, made: Evaluation, unit: ReadingUnit): string | null {
  const { peakN, peakTimeS } = made.result
  if (peakN === null || peakTimeS === null) return null
  const index = curve.timeUs.findIndex((timeUs) => Math.abs(timeUs / 1e6 - peakTimeS) < timeToleranceS)
  if (index < 0) return `its peak at ${peakTimeS} s is no sample of the curve`
  const force = forceOfReading(curve.readings[index]!, made.scale, unit)
  if (force === null) return 'it has a peak in newtons, but no scale that could have made it'
  const tared = force - made.tareOffset
  const allowed = peakTolerance * Math.max(Math.abs(force), Math.abs(made.tareOffset), Math.abs(peakN))
  return Math.abs(tared - peakN) <= allowed
    ? null
    : `its peak of ${peakN} N is not the force at ${peakTimeS} s, which is ${tared} N`
}
