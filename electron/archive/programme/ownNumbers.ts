import type { Label } from '#contract/programme/study.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import type { Database } from '../core/database.ts'
import { storeRecord } from '../core/recordKind.ts'
import { takeRunning } from './runningNumbers.ts'
import { labelKind } from './studyKinds.ts'

/** The next numbers of our own for specimens that are no blocks of a study; `written` as takeRunning takes it. */
export function nextOwnNumbers(
  database: Database,
  count: number,
  written: readonly string[],
): { running: number; number: string }[] {
  return takeRunning(database, count, written).map((running) => ({ running, number: labelOf(running)! }))
}

/** Keeps which specimen a number of our own was given to. */
export function keepLabel(database: Database, label: Label): void {
  storeRecord(database, labelKind, label)
}
