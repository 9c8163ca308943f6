import { pullDecision } from '#contract/programme/pull.ts'
import { block, label, study } from '#contract/programme/study.ts'
import { json, plain } from '../core/columns.ts'
import { recordKind } from '../core/recordKind.ts'
import { numbered, numberedApart, ofItsOwner } from '../core/recordTable.ts'

/** One version of a study. */
export const studyKind = recordKind({
  name: 'study',
  noun: 'version of a study',
  table: 'study_revision',
  identity: numberedApart('revisionId'),
  instant: 'recordedAt',
  schema: study,
  columns: { studyId: plain, revision: plain, recordedAt: plain, by: plain, reason: plain, fields: json },
  topics: ({ studyId }) => [`study ${studyId}`],
})

/** A block that a study plans. */
export const blockKind = recordKind({
  name: 'block',
  noun: 'planned block',
  table: 'block',
  identity: numbered('blockId'),
  instant: 'recordedAt',
  schema: block,
  columns: {
    studyId: plain,
    recordedAt: plain,
    by: plain,
    running: plain,
    adhesive: plain,
    jointType: plain,
    gapMm: plain,
    exposure: plain,
    ageMonths: plain,
    board: plain,
    breakingOrder: plain,
  },
  topics: ({ studyId }) => [`study ${studyId}`],
})

/** The short number of a specimen that is no block of a study. */
export const labelKind = recordKind({
  name: 'label',
  noun: 'label',
  table: 'label',
  identity: ofItsOwner('running'),
  instant: 'recordedAt',
  schema: label,
  columns: { specimenId: plain, recordedAt: plain, by: plain },
  topics: ({ specimenId }) => [`specimen ${specimenId}`],
})

/** A person's word on a pull. */
export const pullDecisionKind = recordKind({
  name: 'pull-decision',
  noun: 'decision on a pull',
  table: 'pull_decision',
  identity: numbered('pullDecisionId'),
  instant: 'recordedAt',
  schema: pullDecision,
  columns: {
    recordedAt: plain,
    by: plain,
    reason: plain,
    studyId: plain,
    gluedOn: plain,
    ageMonths: plain,
    kind: plain,
    dueOn: plain,
    blocksPerSeries: plain,
  },
  topics: ({ studyId }) => [`study ${studyId}`],
})
