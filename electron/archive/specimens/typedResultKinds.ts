import { importRun, typedResult, typedResultDecision } from '#contract/specimens/typedResult.ts'
import { absent, json, named, plain } from '../core/columns.ts'
import { recordKind } from '../core/recordKind.ts'
import { numbered } from '../core/recordTable.ts'

/** A file of past results that was brought in. */
export const importRunKind = recordKind({
  name: 'import-run',
  noun: 'import',
  table: 'import_run',
  identity: numbered('importRunId'),
  instant: 'recordedAt',
  schema: importRun,
  columns: { recordedAt: plain, by: plain, fileName: plain, fileSha256: plain, mapping: json },
  topics: () => ['imports'],
})

/** A result without a curve. */
export const typedResultKind = recordKind({
  name: 'typed-result',
  noun: 'result without a curve',
  table: 'typed_result',
  identity: numbered('typedResultId'),
  instant: 'recordedAt',
  schema: typedResult,
  columns: {
    recordedAt: plain,
    by: plain,
    specimenId: plain,
    source: plain,
    importRunId: plain,
    row: named('sheet_row'),
    column: named('sheet_column'),
    peakN: plain,
    strengthMPa: named('strength_mpa'),
    woodFailurePercent: plain,
    failurePattern: plain,
    brokenOn: plain,
    ageMonths: plain,
    resolutionN: plain,
    readBy: plain,
    note: plain,
  },
  topics: ({ specimenId }) => [`specimen ${specimenId}`],
})

/** A person's word on a result without a curve. */
export const typedResultDecisionKind = recordKind({
  name: 'typed-result-decision',
  noun: 'decision on a result without a curve',
  table: 'typed_result_decision',
  identity: numbered('typedResultDecisionId'),
  instant: 'recordedAt',
  schema: typedResultDecision,
  columns: { typedResultId: plain, recordedAt: plain, by: plain, reason: plain, kind: plain, cause: absent(plain) },
})
