import type { Signature } from '#contract/signature.ts'
import type { Withdrawal } from '#contract/specimens/withdrawal.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { storeRecord } from '../core/recordKind.ts'
import { inTransaction } from '../core/transaction.ts'
import { refreshSpecimens } from '../lists/refresh.ts'
import { requireStored } from '../lists/stored.ts'
import { isWithdrawn } from '../lists/withdrawn.ts'
import { correctSpecimen, specimenRevisions } from './specimens.ts'
import { withdrawalKind } from './withdrawals.ts'

/**
 * Withdraws specimens, or takes them back, all or none, each with a record of its own; those that are so already stay as they
 * are. Returns how many were changed. Throws the trouble "not-found" for a number without a specimen.
 */
export function withdrawSpecimens(
  database: Database,
  specimenIds: readonly number[],
  kind: Withdrawal['kind'],
  recordedAt: string,
  { by, reason }: Signature,
): number {
  return inTransaction(database, () => {
    const stands = prepared<{ withdrawn: number }>(database, `SELECT ${isWithdrawn('?')} AS withdrawn`)
    const changed = specimenIds.filter((specimenId) => {
      requireStored(database, 'specimen', specimenId)
      return (stands.get(specimenId)!.withdrawn === 1) !== (kind === 'withdrawn')
    })
    for (const specimenId of changed)
      storeRecord(database, withdrawalKind, { recordedAt, by, reason, specimenId, kind })
    refreshSpecimens(database, changed)
    return changed.length
  })
}

/**
 * Puts specimens on another place of the shelf, all or none, each with a revision of its own; those that lie there already stay
 * as they are. Returns how many were moved. Throws the trouble "not-found" for a number without a specimen.
 */
export function moveSpecimens(
  database: Database,
  specimenIds: readonly number[],
  place: string,
  recordedAt: string,
  { by, reason }: Signature,
): number {
  return inTransaction(database, () => {
    let moved = 0
    for (const specimenId of specimenIds) {
      const { fields } = specimenRevisions(database, specimenId).at(-1)!
      if (fields.place === place) continue
      correctSpecimen(database, specimenId, { ...fields, place }, recordedAt, by, reason)
      moved += 1
    }
    return moved
  })
}
