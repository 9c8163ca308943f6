import { Trouble } from '#contract/errors.ts'
import { detectionSettings } from '#contract/records/detection.ts'
import type { EvaluationResult } from '#contract/records/evaluation.ts'
import { evaluateCurve } from '#domain/signal/evaluateCurve.ts'
import { newtonsFromPoundsForce } from '#domain/units/conversions.ts'
import { type CurveTable, readCurveCsv } from '#exchange/curveCsv.ts'

export type CurveFileOptions = {
  /** Newtons per count; null: none was given. */
  nPerCount: number | null
  /** Taken off every value, in the unit of the file's column. */
  tare: number
  capacityN: number | null
}

/** Evaluates a curve CSV. Rejects with a Trouble that names the file, and the line where there is one. */
export async function evaluateCurveFile(file: string, options: CurveFileOptions): Promise<EvaluationResult> {
  const table = await readCurveCsv(file)
  const { values, nPerUnit } = chooseColumn(file, table, options.nPerCount)
  const force = values.map((value) => (value - options.tare) * nPerUnit)
  const settings = detectionSettings.parse({ capacityN: options.capacityN })
  const result = evaluateCurve(table.timeS, force, null, settings)
  // A typed scale is nobody's calibration; a file in force may have had one.
  return values === table.columns.counts
    ? { ...result, flags: [...new Set([...result.flags, 'uncalibrated' as const])] }
    : result
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
