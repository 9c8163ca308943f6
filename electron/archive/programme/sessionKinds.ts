// Held by tests/archive/verify/recordKinds.spec.ts.
import { breakingSession, breakingSessionEvent } from '#contract/programme/breakingSession.ts'
import { gluedBlock, glueUp, glueUpCorrection } from '#contract/programme/glueUp.ts'
import type { Topic } from '#contract/topics.ts'
import { json, plain } from '../core/columns.ts'
import { recordKind } from '../core/recordKind.ts'
import { numbered } from '../core/recordTable.ts'

/** A session in which a batch was bonded. */
export const glueUpKind = recordKind({
  name: 'glue-up',
  noun: 'glue-up',
  table: 'glue_up',
  identity: numbered('glueUpId'),
  instant: 'recordedAt',
  schema: glueUp,
  columns: { recordedAt: plain, by: plain, studyId: plain, fields: json },
  topics: ({ glueUpId, studyId }): Topic[] => [
    `glue-up ${glueUpId}`,
    ...(studyId === null ? [] : [`study ${studyId}` as const]),
  ],
})

/** What a glue-up truly was. */
export const glueUpCorrectionKind = recordKind({
  name: 'glue-up-correction',
  noun: 'correction of a glue-up',
  table: 'glue_up_correction',
  identity: numbered('glueUpCorrectionId'),
  instant: 'recordedAt',
  schema: glueUpCorrection,
  columns: { recordedAt: plain, by: plain, reason: plain, glueUpId: plain, fields: json },
  topics: ({ glueUpId }) => [`glue-up ${glueUpId}`],
})

/** A planned block that was glued. */
export const gluedBlockKind = recordKind({
  name: 'glued-block',
  noun: 'glued block',
  table: 'glued_block',
  identity: numbered('gluedBlockId'),
  instant: 'recordedAt',
  schema: gluedBlock,
  columns: { recordedAt: plain, glueUpId: plain, blockId: plain, specimenId: plain },
  topics: ({ glueUpId, specimenId }) => [`glue-up ${glueUpId}`, `specimen ${specimenId}`],
})

/** Specimens that are to be broken one after the other. */
export const breakingSessionKind = recordKind({
  name: 'breaking-session',
  noun: 'breaking session',
  table: 'breaking_session',
  identity: numbered('breakingSessionId'),
  instant: 'startedAt',
  schema: breakingSession,
  columns: { startedAt: plain, by: plain, title: plain, pulls: json, specimenIds: json },
  topics: ({ breakingSessionId }) => [`breaking ${breakingSessionId}`],
})

/** What was done in it besides breaking. */
export const breakingSessionEventKind = recordKind({
  name: 'breaking-session-event',
  noun: 'event of a breaking session',
  table: 'breaking_session_event',
  identity: numbered('breakingSessionEventId'),
  instant: 'recordedAt',
  schema: breakingSessionEvent,
  columns: { breakingSessionId: plain, recordedAt: plain, by: plain, kind: plain, specimenId: plain, note: plain },
  topics: ({ breakingSessionId }) => [`breaking ${breakingSessionId}`],
})
