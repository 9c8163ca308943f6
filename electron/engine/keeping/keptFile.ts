import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

/** How often it is looked whether another program's turn is over. */
const lookMs = 2
/** A turn takes a few milliseconds: one that still lasts after so many looks was left by a program that ended within it. */
const mostLooks = 500

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

/** Keeps what `changed` makes of what the file says now. Programs that do so at the same time take turns, so that none loses what another kept. */
export function changeFile(file: string, changed: () => unknown): void {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 })
  const turn = `${file}-turn`
  takeTurn(turn)
  try {
    keepFile(file, changed())
  } finally {
    rmSync(turn, { force: true })
  }
}

/** Waits for its turn; it lasts until the file `turn` is removed. Throws what the disk says. */
function takeTurn(turn: string): void {
  for (let looks = 1; ; looks++)
    try {
      writeFileSync(turn, String(process.pid), { flag: 'wx', mode: 0o600 })
      return
    } catch (thrown) {
      if ((thrown as NodeJS.ErrnoException).code !== 'EEXIST') throw thrown
      if (looks % mostLooks === 0) rmSync(turn, { force: true })
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, lookMs)
    }
}
