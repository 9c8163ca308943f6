import { type KeptWeights, type WeightEntry, weightSet } from '#contract/calibration/weight.ts'
import { json, plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numbered, readRecords } from '../core/recordTable.ts'
import { inTransaction } from '../core/transaction.ts'

/** The weights of the shop as they were saved at one time. */
export const weightSetKind = recordKind({
  name: 'weights',
  noun: 'set of weights',
  table: 'weight_set',
  identity: numbered('weightSetId'),
  instant: 'recordedAt',
  schema: weightSet,
  columns: { recordedAt: plain, by: plain, weights: json },
  topics: () => ['weights'],
})

/** The weights as they were saved last; none when they never were. */
export function keptWeights(database: Database): KeptWeights {
  const [newest] = readRecords(database, weightSetKind, 'ORDER BY weight_set_id DESC LIMIT 1')
  if (newest === undefined) return { weights: [], savedAt: null, by: '' }
  return { weights: newest.weights, savedAt: newest.recordedAt, by: newest.by }
}

/** Lays a whole set over the older ones, which stay. */
export function saveWeights(
  database: Database,
  weights: readonly WeightEntry[],
  recordedAt: string,
  by: string,
): KeptWeights {
  return inTransaction(database, () => {
    storeRecord(database, weightSetKind, { recordedAt, by, weights: [...weights] })
    return keptWeights(database)
  })
}
