import type { Label } from '#contract/programme/study.ts'
import { labelOf, nextRunnings } from '#domain/programme/labels/label.ts'
import { caseFolded } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { storeRecord } from '../core/recordKind.ts'
import { labelKind } from './studyKinds.ts'

/** The next numbers of our own for specimens that are no blocks of a study; what somebody wrote on a block already is passed over. */
export function nextOwnNumbers(database: Database, count: number): { running: number; number: string }[] {
  const taken = prepared(database, 'SELECT 1 FROM specimen_current WHERE number_folded = ?')
  const { last } = prepared<{ last: number }>(
    database,
    `SELECT max(coalesce((SELECT max(running) FROM block), 0), coalesce((SELECT max(running) FROM label), 0)) AS last`,
  ).get()!
  const numbers: { running: number; number: string }[] = []
  for (let after = last; numbers.length < count; ) {
    for (const running of nextRunnings(after, count - numbers.length)) {
      const number = labelOf(running)!
      if (taken.get(caseFolded(number)) === undefined) numbers.push({ running, number })
      after = running
    }
  }
  return numbers
}

/** Keeps which specimen a number of our own was given to. */
export function keepLabel(database: Database, label: Label): void {
  storeRecord(database, labelKind, label)
}
