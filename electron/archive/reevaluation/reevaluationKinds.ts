import { reevaluation, reevaluationDecision, reevaluationEnd } from '#contract/reevaluation/reevaluation.ts'
import { json, plain } from '../core/columns.ts'
import { recordKind } from '../core/recordKind.ts'
import { numbered, ofItsOwner } from '../core/recordTable.ts'

/** Breaks evaluated once more, as it was begun. */
export const reevaluationKind = recordKind({
  name: 'reevaluation',
  noun: 're-evaluation',
  table: 'reevaluation',
  identity: numbered('reevaluationId'),
  instant: 'begunAt',
  schema: reevaluation,
  columns: { begunAt: plain, by: plain, method: plain, calibrationId: plain, settings: json, breakIds: json },
  topics: ({ reevaluationId }) => [`reevaluation ${reevaluationId}`],
})

/** How it ended. */
export const reevaluationEndKind = recordKind({
  name: 'reevaluation-end',
  noun: 'end of a re-evaluation',
  table: 'reevaluation_end',
  identity: ofItsOwner('reevaluationId'),
  instant: 'endedAt',
  schema: reevaluationEnd,
  columns: { endedAt: plain, ending: plain, problems: json },
  topics: ({ reevaluationId }) => [`reevaluation ${reevaluationId}`],
})

/** A person's word on all its results. */
export const reevaluationDecisionKind = recordKind({
  name: 'reevaluation-decision',
  noun: 'decision on a re-evaluation',
  table: 'reevaluation_decision',
  identity: numbered('reevaluationDecisionId'),
  instant: 'recordedAt',
  schema: reevaluationDecision,
  columns: { reevaluationId: plain, recordedAt: plain, by: plain, reason: plain, kind: plain },
  topics: ({ reevaluationId }) => [`reevaluation ${reevaluationId}`],
})
