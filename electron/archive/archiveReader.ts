import type { Database } from './core/database.ts'
import { databaseTrouble } from './core/databaseTrouble.ts'
import { type OpeningOptions, openDatabase } from './core/openDatabase.ts'
import { reads } from './methods.ts'

/** A function of the archive without the connection, answered at once. */
type Answered<Method> = Method extends (database: Database, ...args: infer Arguments) => infer Result
  ? (...args: Arguments) => Result
  : never

/**
 * The archive for a thread of its own that only reads, and that may wait for the disk: every reading function of methods.ts,
 * answered at once. Each throws a Trouble that says what to do.
 */
export type ArchiveReader = { readonly [Name in keyof typeof reads]: Answered<(typeof reads)[Name]> } & {
  /** Whatever `look` reads is of one moment of the archive, also while another program writes. */
  atOneMoment<Seen>(look: () => Seen): Seen
}

export type ReaderOpening = Omit<OpeningOptions, 'mode'>

/** Opens an archive for reading in this thread. Throws a Trouble that says what stands in the way. */
export function openReader(opening: ReaderOpening): ArchiveReader & { close(): void } {
  const { database, close } = openDatabase({ ...opening, mode: 'read' }, () => [])
  return { ...readerOf(database, opening.path), close }
}

/** The same over a connection that is open already. */
export function readerOf(database: Database, path: string): ArchiveReader {
  const told =
    <Arguments extends unknown[], Result>(work: (...args: Arguments) => Result) =>
    (...args: Arguments): Result => {
      try {
        return work(...args)
      } catch (thrown) {
        throw databaseTrouble(thrown, path)
      }
    }
  const calls = Object.fromEntries(
    Object.entries(reads).map(([name, read]) => [
      name,
      told((...args: unknown[]) => (read as (database: Database, ...args: unknown[]) => unknown)(database, ...args)),
    ]),
  ) as Pick<ArchiveReader, keyof typeof reads>
  return { ...calls, atOneMoment: told((look) => database.transaction(look)()) as ArchiveReader['atOneMoment'] }
}
