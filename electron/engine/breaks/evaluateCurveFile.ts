// Held by tests/shells/commands/evaluateCommand.spec.ts.
import { detectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { Trouble } from '#contract/errors.ts'
import { calibratedScale } from '#domain/calibration/scale/calibratedScale.ts'
import { forceOfReading } from '#domain/calibration/scale/forceScale.ts'
import { workByDisplacement } from '#domain/signal/events/area.ts'
import { evaluateCurve } from '#domain/signal/loading/evaluateCurve.ts'
import { flaggedResult, type VerifiedRange } from '#domain/signal/loading/storedEvaluation.ts'
import { zeroBeforeLoad } from '#domain/signal/rest/zeroBeforeLoad.ts'
import { newtonsPerPoundForce } from '#domain/units/factors.ts'
import { type CurveTable, readCurveCsv, type ValueColumn } from '#exchange/csv/curveCsv.ts'
import { readArchive } from '../core/readArchive.ts'

export type CurveFileOptions = {
  /** Newtons per count; null: none was given. */
  nPerCount: number | null
  /** Taken off every value, in the unit of the file's column; null: found by the program, where it is needed. */
  tare: number | null
  capacityN: number | null
  /** Constant speed of the press, mm/s, for the work to failure; null: none was given. */
  pressSpeedMmPerS: number | null
  /** A calibration that turns counts into newtons; null: none. */
  calibration: CalibrationOfFile | null
}

/** How the zero of a curve came about: `typed` by the person, `rest` before the load, `unknown`: nothing was taken off. */
export type ZeroOfFile =
  | { kind: 'typed' | 'unknown' }
  | { kind: 'rest'; offsetN: number; sdN: number; readings: number }

export type EvaluatedFile = {
  result: EvaluationResult
  column: ValueColumn
  /** The zero of a curve in counts; null: the curve is in force, whose zero is its maker's. */
  zero: ZeroOfFile | null
  /** The work is by the displacement that the file has, and a speed that was given was left aside. */
  measuredDisplacement: boolean
}

/** What of a stored calibration a curve in counts needs. */
export type CalibrationOfFile = { scale: ForceScale; verifiedRangeN: VerifiedRange }

/** Reads a calibration from an archive, for curves in counts. Rejects with Trouble `not-found`. */
export function calibrationOfArchive(path: string, program: string, calibrationId: number): Promise<CalibrationOfFile> {
  return readArchive(path, program, async (archive) => {
    const calibration = await archive.calibration(calibrationId)
    return { scale: calibratedScale(calibration), verifiedRangeN: calibration.assessment.result.verifiedRangeN }
  })
}

/** Evaluates a curve CSV. Rejects with a Trouble that names the file, and the line where there is one. */
export async function evaluateCurveFile(file: string, options: CurveFileOptions): Promise<EvaluatedFile> {
  const { calibration, capacityN } = options
  const { timeS, columns, displacementMm } = await readCurveCsv(file)
  const pressSpeedMmPerS = displacementMm === null ? options.pressSpeedMmPerS : null
  const settings = detectionSettings.parse({ capacityN, pressSpeedMmPerS })
  const measuredDisplacement = displacementMm !== null
  const column = chosenColumn(file, columns, options)
  const values = columns[column]!
  if (column !== 'counts') {
    const nPerUnit = column === 'force_lbf' ? newtonsPerPoundForce : 1
    const tare = options.tare ?? 0
    const force = values.map((value) => (value - tare) * nPerUnit)
    const result = withMeasuredWork(evaluateCurve(timeS, force, null, settings), timeS, force, displacementMm)
    return { result, column, zero: null, measuredDisplacement }
  }
  const scale = calibration?.scale ?? { kind: 'uncalibrated-scale', nPerCount: options.nPerCount! }
  const toForce = forceOfReading(scale, 'counts')!
  const force = values.map(toForce)
  const { offsetN, zero } = zeroOf(timeS, force, options.tare === null ? null : toForce(options.tare))
  const tared = force.map((value) => value - offsetN)
  const found = withMeasuredWork(evaluateCurve(timeS, tared, null, settings), timeS, tared, displacementMm)
  const result = flaggedResult(found, scale, 'complete', calibration?.verifiedRangeN ?? null)
  return { result, column, zero, measuredDisplacement }
}

/** A result with the work by a measured displacement, from onset to break; to the peak, when nothing broke. */
function withMeasuredWork(
  result: EvaluationResult,
  timeS: Float64Array,
  force: Float64Array,
  displacementMm: Float64Array | null,
): EvaluationResult {
  const { course, onsetTimeS, breakTimeS, peakTimeS } = result
  if (displacementMm === null || course === null || onsetTimeS === null) return result
  const untilS = breakTimeS ?? peakTimeS!
  const from = timeS.findIndex((at) => at >= onsetTimeS)
  const to = timeS.findLastIndex((at) => at <= untilS) + 1
  if (to - from < 2) return result
  const zeroN = zeroBeforeLoad(timeS, force)?.offset ?? 0
  const loadN = force.subarray(from, to).map((value) => value - zeroN)
  return { ...result, course: { ...course, workJ: workByDisplacement(displacementMm.subarray(from, to), loadN) } }
}

function zeroOf(
  timeS: Float64Array,
  force: Float64Array,
  typedN: number | null,
): { offsetN: number; zero: ZeroOfFile } {
  if (typedN !== null) return { offsetN: typedN, zero: { kind: 'typed' } }
  const rest = zeroBeforeLoad(timeS, force)
  if (rest === null) return { offsetN: 0, zero: { kind: 'unknown' } }
  const { offset: offsetN, sd: sdN, readings } = rest
  return { offsetN, zero: { kind: 'rest', offsetN, sdN, readings } }
}

/** Force goes before counts: whoever wrote both knew the zero. Only a calibration that was named asks for the counts. */
function chosenColumn(file: string, columns: CurveTable['columns'], options: CurveFileOptions): ValueColumn {
  const { counts, force_N, force_lbf } = columns
  if (counts !== undefined && options.calibration !== null) return 'counts'
  if (force_N !== undefined) return 'force_N'
  if (force_lbf !== undefined) return 'force_lbf'
  if (counts !== undefined && options.nPerCount !== null) return 'counts'
  throw new Trouble(
    'invalid-input',
    `${file}: the curve is in counts, and no scale says how many newtons a count is.`,
    'Give it with --scale N_PER_COUNT.',
  )
}
