import { existsSync, renameSync, rmSync } from 'node:fs'

/** Puts a finished folder in the place of another, so that whoever reads there meets the old files or the new, not an emptied folder. */
export function replaceFolder(finished: string, place: string): void {
  const leaving = `${finished}-old`
  rmSync(leaving, { recursive: true, force: true })
  if (existsSync(place)) renameSync(place, leaving)
  renameSync(finished, place)
  rmSync(leaving, { recursive: true, force: true })
}
