import { catalogueDecision, catalogueEntry } from '#contract/programme/catalogue.ts'
import { json, plain } from '../core/columns.ts'
import { recordKind } from '../core/recordKind.ts'
import { numbered, numberedApart } from '../core/recordTable.ts'

/** One version of what the catalogue knows of a thing. */
export const catalogueEntryKind = recordKind({
  name: 'catalogue-entry',
  noun: 'version of a catalogue entry',
  table: 'catalogue_revision',
  identity: numberedApart('revisionId'),
  instant: 'recordedAt',
  schema: catalogueEntry,
  columns: { entryId: plain, revision: plain, recordedAt: plain, by: plain, reason: plain, fields: json },
  topics: () => ['catalogue'],
})

/** A person's word that two entries are one thing. */
export const catalogueDecisionKind = recordKind({
  name: 'catalogue-decision',
  noun: 'decision on the catalogue',
  table: 'catalogue_decision',
  identity: numbered('catalogueDecisionId'),
  instant: 'recordedAt',
  schema: catalogueDecision,
  columns: { recordedAt: plain, by: plain, reason: plain, kind: plain, fromEntryId: plain, intoEntryId: plain },
  topics: () => ['catalogue'],
})
