import { closeSync, fchmodSync, openSync, statSync } from 'node:fs'

/** What only its owner may read and write. */
export const ownersOnly = 0o600
const anybody = 0o666
const writing = 0o222

/** Makes an empty file with just these permissions, whatever the process would take away by itself; one that is there stays. */
export function makeFile(path: string, mode: number): void {
  try {
    const file = openSync(path, 'wx', mode)
    fchmodSync(file, mode)
    closeSync(file)
  } catch (thrown) {
    if (!(thrown instanceof Error && 'code' in thrown && thrown.code === 'EEXIST')) throw thrown
  }
}

/** Who may read and write a file, so that a copy of it is for the same people; of one that is not there: its owner. */
export function permissionsOf(path: string): number {
  return (statSync(path, { throwIfNoEntry: false })?.mode ?? ownersOnly) & anybody
}

/** Reading and writing for whoever may write to the file, nothing for anybody else. */
export function writersOf(path: string): number {
  const writers = permissionsOf(path) & writing
  return writers | (writers << 1) | ownersOnly
}
