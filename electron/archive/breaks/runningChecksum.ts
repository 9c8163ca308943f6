import { createHash } from 'node:crypto'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import type { Database } from '../core/database.ts'
import { readContent } from '../core/recordTable.ts'
import { bytesMatch, type CurveBlock } from '../curves/curveBlock.ts'
import { headerTable } from './breakHeaders.ts'

export type NumberedBlock = CurveBlock & { block: number }

/**
 * SHA-256, hex, of a block of a capture that runs: no entry of the ledger covers it yet, so it covers the header of the break
 * with its scale, every column of the block, and its bytes; FORMAT.md, "Curve coding", says how they lie.
 */
export function runningSha256(database: Database, breakId: number, coded: NumberedBlock): string {
  const { times, readings, sha256: _sha256, ...columns } = coded
  const header = readContent(database, headerTable, breakId)
  return createHash('sha256')
    .update(`${canonicalJson(header)}\n${canonicalJson(columns)}\n`)
    .update(times)
    .update(readings)
    .digest('hex')
}

/** Whether a running block is as it was stored. One that an older program wrote covers its bytes alone. */
export function isAsStored(database: Database, breakId: number, coded: NumberedBlock): boolean {
  return coded.sha256 === runningSha256(database, breakId, coded) || bytesMatch(coded)
}
