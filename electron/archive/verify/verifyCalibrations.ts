import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import { routineReadings } from '../calibration/calibrationRoutines.ts'
import { storedCalibration } from '../calibration/calibrations.ts'
import type { Database } from '../core/database.ts'
import type { Report } from '../core/fault.ts'
import { prepared } from '../core/prepared.ts'
import { independentForceN } from './independentForce.ts'

/** Of the highest force: the residual of a row may differ by the order of the arithmetic. */
const residualTolerance = 1e-7

/**
 * Holds each calibration against the readings it was made from, its residuals against its own curve, and every result that
 * names a calibration against the curve of that calibration.
 */
export function verifyCalibrations(database: Database, report: Report): void {
  const stored = prepared<{ calibration_id: number; routine_id: number | null }>(
    database,
    'SELECT calibration_id, routine_id FROM calibration ORDER BY calibration_id',
  ).all()
  for (const { calibration_id, routine_id } of stored) {
    const where = `calibration ${calibration_id}`
    const { readings, rows, readingUnit, assessment } = storedCalibration(database, calibration_id)
    if (routine_id !== null) {
      const taken = readings.map(({ standing: _standing, replacedBy: _replacedBy, ...reading }) => reading)
      if (canonicalJson(taken) !== canonicalJson(routineReadings(database, routine_id)))
        report({ where, what: 'its readings are not those of its routine' })
    }
    const { coefficients } = assessment.result
    const scale: ForceScale = { kind: 'calibration', calibrationId: calibration_id, coefficients }
    const highestN = Math.max(...rows.map((row) => Math.abs(row.forceN)))
    rows.forEach((row, index) => {
      const residualN = independentForceN(row.reading, scale, readingUnit)! - row.forceN
      if (!(Math.abs(residualN - assessment.residualsN[index]!) <= residualTolerance * highestN))
        report({ where, what: `the residual of its row ${index + 1} is not what its curve gives` })
    })
  }
  verifyScales(database, report)
}

/** The coefficients that a result was made with are those of the calibration that it names. */
function verifyScales(database: Database, report: Report): void {
  const scales = prepared<{ evaluation_id: number; break_id: number; scale: string }>(
    database,
    `SELECT evaluation_id, break_id, scale FROM evaluation WHERE json_extract(scale, '$.kind') = 'calibration'`,
  ).all()
  for (const row of scales) {
    const where = `evaluation ${row.evaluation_id} of break ${row.break_id}`
    const scale: Extract<ForceScale, { kind: 'calibration' }> = JSON.parse(row.scale)
    const exists = prepared(database, 'SELECT 1 FROM calibration WHERE calibration_id = ?').get(scale.calibrationId)
    if (exists === undefined) report({ where, what: `it names calibration ${scale.calibrationId}, which is not there` })
    else if (
      canonicalJson(scale.coefficients) !==
      canonicalJson(storedCalibration(database, scale.calibrationId).assessment.result.coefficients)
    )
      report({ where, what: `its curve is not that of calibration ${scale.calibrationId}` })
  }
}
