import { withdrawal } from '#contract/specimens/withdrawal.ts'
import { plain } from '../core/columns.ts'
import { recordKind } from '../core/recordKind.ts'
import { numbered } from '../core/recordTable.ts'

/** A specimen that leaves the study, or comes back. */
export const withdrawalKind = recordKind({
  name: 'withdrawal',
  noun: 'withdrawal',
  table: 'withdrawal',
  identity: numbered('withdrawalId'),
  instant: 'recordedAt',
  schema: withdrawal,
  columns: { recordedAt: plain, by: plain, reason: plain, specimenId: plain, kind: plain },
  topics: ({ specimenId }) => [`specimen ${specimenId}`],
})
