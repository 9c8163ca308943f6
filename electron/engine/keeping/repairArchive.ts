import { repairArchive as repair } from '#archive/repairArchive.ts'

/** What a repair of an archive that nobody else has open did. Throws a Trouble that says what stands in the way. */
export function repairArchive(path: string) {
  return repair(path, new Date().toISOString())
}
