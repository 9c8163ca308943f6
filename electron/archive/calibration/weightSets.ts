import type Database from 'better-sqlite3'
import { type KeptWeights, keptWeights as schema, type WeightEntry } from '#contract/calibration/weight.ts'
import { canonicalJson } from '../core/canonicalJson.ts'
import { addLedgeredRow } from '../core/ledgeredRow.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'

type WeightSetRow = { weight_set_id: number; recorded_at: string; by: string; weights: string }

/** What the ledger holds of a set of weights: just what is stored. */
export function weightSetContent(database: Database.Database, weightSetId: number): unknown {
  const row = prepared<WeightSetRow>(database, 'SELECT * FROM weight_set WHERE weight_set_id = ?').get(weightSetId)
  if (row === undefined) throw notFound('set of weights', weightSetId)
  const { weight_set_id, recorded_at, by, weights } = row
  return { weightSetId: weight_set_id, recordedAt: recorded_at, by, weights: JSON.parse(weights) }
}

/** The weights as they were saved last; none when they never were. */
export function keptWeights(database: Database.Database): KeptWeights {
  const row = prepared<WeightSetRow>(database, 'SELECT * FROM weight_set ORDER BY weight_set_id DESC LIMIT 1').get()
  if (row === undefined) return { weights: [], savedAt: null, by: '' }
  return schema.parse({ weights: JSON.parse(row.weights), savedAt: row.recorded_at, by: row.by })
}

/** Lays a whole set over the older ones, which stay. */
export function saveWeights(
  database: Database.Database,
  weights: readonly WeightEntry[],
  recordedAt: string,
  by: string,
): KeptWeights {
  const row = {
    kind: 'weights',
    recordedAt,
    sql: 'INSERT INTO weight_set (recorded_at, by, weights) VALUES (@recordedAt, @by, @weights)',
    values: { recordedAt, by, weights: canonicalJson(weights) },
    content: weightSetContent,
  } as const
  addLedgeredRow(database, row, { after: () => touch(database, 'weights') })
  return keptWeights(database)
}
