import type Database from 'better-sqlite3'
import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'
import { forceOfReading } from '#domain/calibration/scale/forceScale.ts'
import { prepared } from '../core/prepared.ts'

type PeakWord = {
  kind: 'peak-picked' | 'premature-failure' | 'peak-as-found'
  sample_reading: number | null
  reading_unit: ReadingUnit
  scale: string | null
  tare_offset: number | null
}

/**
 * The load that a person's word puts in place of the peak found, N: the force of its sample under scale and tare of the
 * result in force. Null: the word lets the found peak stand, or there is no result yet. peakN null: no scale.
 */
export function overruledPeakN(
  database: Database.Database,
  decisionId: number,
  evaluationId: number | null,
): { peakN: number | null } | null {
  const word = prepared<PeakWord>(
    database,
    `SELECT d.kind, d.sample_reading, h.reading_unit, e.scale, e.tare_offset FROM decision d
     JOIN break_header h ON h.break_id = d.break_id
     LEFT JOIN evaluation e ON e.evaluation_id = @evaluationId
     WHERE d.decision_id = @decisionId`,
  ).get({ decisionId, evaluationId })
  if (word === undefined) throw new RangeError(`overruledPeakN requires a stored decision, and ${decisionId} is none`)
  if (word.sample_reading === null || word.scale === null) return null
  const scale: ForceScale = JSON.parse(word.scale)
  const toForceN = forceOfReading(scale, word.reading_unit)
  return { peakN: toForceN === null ? null : toForceN(word.sample_reading) - (word.tare_offset ?? 0) }
}
