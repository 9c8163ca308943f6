import { createHash } from 'node:crypto'
import type { Database } from '../core/database.ts'
import type { Report } from '../core/fault.ts'
import { prepared } from '../core/prepared.ts'

/** Holds the bytes of every picture against the hash and the length in its record, which the chain of hashes covers, one at a time. */
export function verifyPictures(database: Database, report: Report): void {
  const kept = prepared<{ attachment_id: number; bytes: number; sha256: string }>(
    database,
    'SELECT attachment_id, bytes, sha256 FROM attachment ORDER BY attachment_id',
  ).all()
  const contentOf = prepared<{ content: Uint8Array }>(database, 'SELECT content FROM attachment_bytes WHERE sha256 = ?')
  for (const { attachment_id, bytes, sha256 } of kept) {
    const where = `picture ${attachment_id}`
    const content = contentOf.get(sha256)?.content
    if (content === undefined) report({ where, what: 'its bytes are gone' })
    else if (content.length !== bytes || createHash('sha256').update(content).digest('hex') !== sha256)
      report({ where, what: 'its bytes are not those that were stored' })
  }
}
