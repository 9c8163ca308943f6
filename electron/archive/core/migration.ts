import type { Database } from './database.ts'

/**
 * One step of the format, in one transaction with those before and after it: first the text, then the code. It is never edited
 * once released; a change of format is a new file with the next number. `instant` is when it is done, ISO 8601 UTC.
 */
export type Migration = {
  readonly number: number
  readonly title: string
  readonly sql?: string
  run?(database: Database, instant: string): void
}
