import { openArchive } from '#archive/openArchive.ts'
import { Trouble } from '#contract/errors.ts'
import { detectionSettings } from '#contract/records/detection.ts'
import type { EvaluationResult } from '#contract/records/evaluation.ts'
import type { ForceScale } from '#contract/records/force.ts'
import { forceOfReading } from '#domain/force/forceScale.ts'
import { evaluateCurve } from '#domain/signal/evaluateCurve.ts'
import { newtonsFromPoundsForce } from '#domain/units/conversions.ts'
import { type CurveTable, readCurveCsv } from '#exchange/curveCsv.ts'
import { calibratedScale } from './calibrationInForce.ts'
import { flaggedResult, type VerifiedRange } from './storedEvaluation.ts'

export type CurveFileOptions = {
  /** Newtons per count; null: none was given. */
  nPerCount: number | null
  /** Taken off every value, in the unit of the file's column. */
  tare: number
  capacityN: number | null
  /** A calibration that turns counts into newtons; null: none. */
  calibration: CalibrationOfFile | null
}

/** What of a stored calibration a curve in counts needs. */
export type CalibrationOfFile = { scale: ForceScale; verifiedRangeN: VerifiedRange }

/** Reads a calibration from an archive, for curves in counts. Rejects with Trouble `not-found`. */
export async function calibrationOfArchive(
  path: string,
  program: string,
  calibrationId: number,
): Promise<CalibrationOfFile> {
  const archive = await openArchive({ path, program, mode: 'read' })
  try {
    const calibration = await archive.calibration(calibrationId)
    return { scale: calibratedScale(calibration), verifiedRangeN: calibration.assessment.result.verifiedRangeN }
  } finally {
    await archive.close()
  }
}

/** Evaluates a curve CSV. Rejects with a Trouble that names the file, and the line where there is one. */
export async function evaluateCurveFile(file: string, options: CurveFileOptions): Promise<EvaluationResult> {
  const table = await readCurveCsv(file)
  if (options.calibration !== null && table.columns.counts !== undefined)
    return calibratedResult(table.timeS, table.columns.counts, options.calibration, options)
  const { values, nPerUnit } = chooseColumn(file, table, options.nPerCount)
  const force = values.map((value) => (value - options.tare) * nPerUnit)
  const settings = detectionSettings.parse({ capacityN: options.capacityN })
  const result = evaluateCurve(table.timeS, force, null, settings)
  // A typed scale is nobody's calibration; a file in force may have had one.
  return values === table.columns.counts
    ? { ...result, flags: [...new Set([...result.flags, 'uncalibrated' as const])] }
    : result
}

function calibratedResult(
  timeS: Float64Array,
  counts: Float64Array,
  { scale, verifiedRangeN }: CalibrationOfFile,
  { tare, capacityN }: CurveFileOptions,
): EvaluationResult {
  const toForce = forceOfReading(scale, 'counts')!
  const offset = toForce(tare)
  const force = counts.map((reading) => toForce(reading) - offset)
  const result = evaluateCurve(timeS, force, null, detectionSettings.parse({ capacityN }))
  return flaggedResult(result, scale, 'complete', verifiedRangeN)
}

/** Counts are used when there is a scale for them, else force. */
function chooseColumn(file: string, { columns }: CurveTable, nPerCount: number | null) {
  const { counts, force_N, force_lbf } = columns
  if (counts !== undefined && nPerCount !== null) return { values: counts, nPerUnit: nPerCount }
  if (force_N !== undefined) return { values: force_N, nPerUnit: 1 }
  if (force_lbf !== undefined) return { values: force_lbf, nPerUnit: newtonsFromPoundsForce(1) }
  throw new Trouble(
    'invalid-input',
    `${file}: the curve is in counts, and no scale says how many newtons a count is.`,
    'Give it with --scale N_PER_COUNT.',
  )
}
