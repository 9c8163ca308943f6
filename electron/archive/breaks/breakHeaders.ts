import { type BreakEnd, type BreakHeader, breakEnd, breakHeader } from '#contract/breaks/capture.ts'
import { json, plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import type { LedgeredKind } from '../core/recordKind.ts'
import { findRecord, numbered, ofItsOwner, readContent, readRecord, recordTable } from '../core/recordTable.ts'

/** What is known when a capture begins. */
export const headerTable = recordTable({
  noun: 'break',
  table: 'break_header',
  identity: numbered('breakId'),
  schema: breakHeader,
  columns: {
    sessionId: plain,
    specimenId: plain,
    startedAt: plain,
    readingUnit: plain,
    scale: json,
    tare: json,
    settings: json,
  },
})

/** What is known when it has ended. */
export const endTable = recordTable({
  noun: 'end of break',
  table: 'break_end',
  identity: ofItsOwner('breakId'),
  schema: breakEnd,
  columns: { endedAt: plain, ending: plain, samples: plain, missingSamples: plain, curveSha256: plain },
})

/** A finished break: the ledger holds both at its end, and the curve by its checksum. */
export const breakKind: LedgeredKind = {
  name: 'break',
  ids: endTable.texts.ids,
  content: (database, breakId) => ({
    header: readContent(database, headerTable, breakId),
    end: readContent(database, endTable, breakId),
  }),
  check(content) {
    const { header, end } = content as Record<'header' | 'end', unknown>
    headerTable.parse(header)
    endTable.parse(end)
  },
}

/** What was known when the capture began. Throws the trouble "not-found" when there is no such break. */
export function readHeader(database: Database, breakId: number): BreakHeader {
  return readRecord(database, headerTable, breakId)
}

/** How the capture ended; null while it runs. */
export function readEnd(database: Database, breakId: number): BreakEnd | null {
  return findRecord(database, endTable, breakId)
}
