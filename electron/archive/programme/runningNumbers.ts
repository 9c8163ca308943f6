// Held by tests/archive/programme/ownNumbers.spec.ts.
import { labelOf, nextRunning } from '#domain/programme/labels/label.ts'
import { caseFolded, folded } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'

/**
 * The next short numbers that no block and no label has, without their check digits; what somebody wrote on a specimen already, or
 * is about to (`written`), is passed over: people count their blocks too. Call it inside the transaction that gives them away.
 */
export function takeRunning(database: Database, count: number, written: readonly string[] = []): number[] {
  const { last } = prepared<{ last: number }>(
    database,
    'SELECT max((SELECT coalesce(max(running), 0) FROM block), (SELECT coalesce(max(running), 0) FROM label)) AS last',
  ).get()!
  const stored = prepared(database, 'SELECT 1 FROM specimen_current WHERE number_folded = ?')
  const toCome = new Set(written.map(folded))
  const found: number[] = []
  for (let running = last; found.length < count; ) {
    running = nextRunning(running)
    const number = labelOf(running)!
    if (!toCome.has(number) && stored.get(caseFolded(number)) === undefined) found.push(running)
  }
  return found
}
