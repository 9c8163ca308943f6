import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

/**
 * Keeps a value as JSON for this user alone. The file is replaced as a whole, so that it is never half written; where that fails
 * it stays as it was, with nothing beside it. Throws what the disk says.
 */
export function keepFile(file: string, value: unknown): void {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 })
  // Of this process alone, as another may be keeping the same file at the same time.
  const unfinished = `${file}-${process.pid}`
  try {
    writeFileSync(unfinished, `${JSON.stringify(value, null, 2)}\n`, { mode: 0o600 })
    renameSync(unfinished, file)
  } catch (thrown) {
    rmSync(unfinished, { force: true })
    throw thrown
  }
}
