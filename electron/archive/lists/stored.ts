import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'

/** Whether a number names a record of another subject. */
const texts = {
  session: 'SELECT 1 FROM capture_session WHERE session_id = ?',
  specimen: 'SELECT 1 FROM specimen_revision WHERE specimen_id = ? LIMIT 1',
  calibration: 'SELECT 1 FROM calibration WHERE calibration_id = ?',
} as const

/** Throws the trouble "not-found" unless there is such a record. */
export function requireStored(database: Database, noun: keyof typeof texts, id: number): void {
  if (prepared(database, texts[noun]).get(id) === undefined) throw notFound(noun, id)
}
