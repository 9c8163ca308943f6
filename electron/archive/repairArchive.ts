import { type Repair, repairFile } from './core/schema/repairFile.ts'

export type { Repair }

/** Writes the known texts of an archive's tables, indexes and triggers again, after a copy. Throws a Trouble otherwise. */
export function repairArchive(path: string, instant: string): Repair {
  return repairFile(path, instant)
}
