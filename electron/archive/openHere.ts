import type { Progress } from '#contract/tasks.ts'
import { recoverBreaks } from './breaks/recovery.ts'
import type { Migration } from './core/migration.ts'
import { type OpenedArchive, type OpeningOptions, openDatabase } from './core/openDatabase.ts'
import { isDerivedHere } from './lists/derivation.ts'
import { rebuildDerived } from './lists/rebuild.ts'
import { endCutShort } from './reevaluation/reevaluations.ts'

/**
 * Opens an archive in this thread. For writing, lists that another version of the program derived are made again, with
 * progress, and what a crash left running is ended. Throws a Trouble that says what stands in the way.
 */
export function openHere(
  options: OpeningOptions,
  onProgress: (progress: Progress) => void = () => {},
  migrations?: readonly Migration[],
): OpenedArchive {
  return openDatabase(
    options,
    (database) => {
      if (!isDerivedHere(database)) rebuildDerived(database, onProgress, () => false)
      endCutShort(database, options.instant)
      return recoverBreaks(database)
    },
    migrations,
  )
}
