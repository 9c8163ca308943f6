import { nextRunnings } from '#domain/programme/labels/label.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'

/**
 * The next short numbers that no block and no label has, without their check digits. Call it inside the transaction that gives
 * them away.
 */
export function takeRunning(database: Database, count: number): number[] {
  const { last } = prepared<{ last: number }>(
    database,
    'SELECT max((SELECT coalesce(max(running), 0) FROM block), (SELECT coalesce(max(running), 0) FROM label)) AS last',
  ).get()!
  return nextRunnings(last, count)
}
