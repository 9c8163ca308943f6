import type { Signature } from '#contract/signature.ts'
import type { Specimen, SpecimenFields } from '#contract/specimens/specimen.ts'
import type { Withdrawal } from '#contract/specimens/withdrawal.ts'
import type { Progress } from '#contract/tasks.ts'
import { nameNew } from '../catalogue/newNames.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { storeRecord } from '../core/recordKind.ts'
import { stopped } from '../core/recordTrouble.ts'
import { inTransaction } from '../core/transaction.ts'
import { batchesOf } from '../lists/rebuild.ts'
import { refreshSpecimens } from '../lists/refresh.ts'
import { requireStored } from '../lists/stored.ts'
import { isWithdrawn } from '../lists/withdrawn.ts'
import { specimenKind, specimenRevisions, touchBreaksOf } from './specimens.ts'
import { withdrawalKind } from './withdrawals.ts'

type Tell = (progress: Progress) => void

/**
 * Withdraws specimens, or takes them back, all or none, each with a record of its own; those that are so already stay as they
 * are. Returns how many were changed. Throws the trouble "not-found" for a number without a specimen, "cancelled" when it is
 * stopped.
 */
export function withdrawSpecimens(
  database: Database,
  onProgress: Tell,
  isCancelled: () => boolean,
  specimenIds: readonly number[],
  kind: Withdrawal['kind'],
  recordedAt: string,
  { by, reason }: Signature,
): number {
  return inTransaction(database, () => {
    const stands = prepared<{ withdrawn: number }>(database, `SELECT ${isWithdrawn('?')} AS withdrawn`)
    return inSteps(database, onProgress, isCancelled, specimenIds, (specimenId) => {
      requireStored(database, 'specimen', specimenId)
      if ((stands.get(specimenId)!.withdrawn === 1) === (kind === 'withdrawn')) return false
      storeRecord(database, withdrawalKind, { recordedAt, by, reason, specimenId, kind })
      return true
    })
  })
}

/**
 * Puts specimens on another place of the shelf, all or none, each with a revision of its own; those that lie there already stay
 * as they are. Returns how many were moved. Throws the trouble "not-found" for a number without a specimen, "cancelled" when it
 * is stopped.
 */
export function moveSpecimens(
  database: Database,
  onProgress: Tell,
  isCancelled: () => boolean,
  specimenIds: readonly number[],
  place: string,
  recordedAt: string,
  { by, reason }: Signature,
): number {
  return inTransaction(database, () => {
    const names = [
      { kind: 'place', name: place, of: '' },
      { kind: 'operator', name: by, of: '' },
    ] as const
    nameNew(database, names, recordedAt, by)
    const there = (fields: SpecimenFields) => (fields.place === place ? fields : { ...fields, place })
    return inSteps(database, onProgress, isCancelled, specimenIds, (specimenId) =>
      revise(database, specimenId, there, { recordedAt, by, reason }),
    )
  })
}

type Signed = Pick<Specimen, 'recordedAt' | 'by' | 'reason'>
type Change = (fields: SpecimenFields) => SpecimenFields

/**
 * Lays a revision over each of some specimens that `change` makes another of; those that it gives back as they are stay so. Call it
 * inside a transaction that names in the catalogue what is new.
 */
export function reviseSpecimens(
  database: Database,
  specimenIds: readonly number[],
  change: Change,
  made: Signed,
): void {
  refreshSpecimens(
    database,
    specimenIds.filter((specimenId) => revise(database, specimenId, change, made)),
  )
}

function revise(database: Database, specimenId: number, change: Change, made: Signed): boolean {
  const before = specimenRevisions(database, specimenId)
  const { fields } = before.at(-1)!
  const changed = change(fields)
  if (changed === fields) return false
  storeRecord(database, specimenKind, { specimenId, revision: before.length + 1, ...made, fields: changed })
  touchBreaksOf(database, specimenId)
  return true
}

/** Changes one specimen after the other and brings their current rows up to date, some at a time; returns how many changed. */
function inSteps(
  database: Database,
  onProgress: Tell,
  isCancelled: () => boolean,
  specimenIds: readonly number[],
  change: (specimenId: number) => boolean,
): number {
  let done = 0
  let changed = 0
  for (const some of batchesOf(specimenIds)) {
    onProgress({ task: 'specimens', done, total: specimenIds.length })
    if (isCancelled()) throw stopped('It was stopped; every specimen is as it was.')
    const touched = some.filter(change)
    refreshSpecimens(database, touched)
    done += some.length
    changed += touched.length
  }
  return changed
}
