import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { type KeptHead, keptHeadsFile } from '#contract/keeping/archive.ts'

/** The heads of chains that are kept outside the archives, by the identity of each; none where there is no such file yet. */
export function readKeptHeads(file: string): Record<string, KeptHead> {
  try {
    return keptHeadsFile.parse(JSON.parse(readFileSync(file, 'utf8')))
  } catch {
    // A file that is not there or cannot be read can vouch for nothing; it is written anew.
    return {}
  }
}

/** Keeps the head of one chain: the file is replaced as a whole, so that it is never half written. One archive lies in one place. */
export function keepHead(file: string, identity: string, head: KeptHead): void {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 })
  // Of this process alone, as another may be keeping a head at the same time.
  const unfinished = `${file}-${process.pid}`
  writeFileSync(unfinished, `${JSON.stringify({ ...elsewhere(file, head.path), [identity]: head }, null, 2)}\n`, {
    mode: 0o600,
  })
  renameSync(unfinished, file)
}

/** The heads as they were, where none is said to lie in that place: another archive lies there now. */
function elsewhere(file: string, path: string | undefined): Record<string, KeptHead> {
  const heads = Object.entries(readKeptHeads(file))
  return Object.fromEntries(
    heads.map(([identity, { path: before, ...head }]) => [
      identity,
      before === undefined || before === path ? head : { ...head, path: before },
    ]),
  )
}
