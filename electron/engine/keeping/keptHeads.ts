import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { type ChainHead, keptHeadsFile } from '#contract/keeping/archive.ts'

/** The heads of chains that are kept outside the archives, by the identity of each; none where there is no such file yet. */
export function readKeptHeads(file: string): Record<string, ChainHead> {
  try {
    return keptHeadsFile.parse(JSON.parse(readFileSync(file, 'utf8')))
  } catch {
    // A file that is not there or cannot be read can vouch for nothing; it is written anew.
    return {}
  }
}

/** Keeps the head of one chain: the file is replaced as a whole, so that it is never half written. */
export function keepHead(file: string, identity: string, head: ChainHead): void {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 })
  // Of this process alone, as another may be keeping a head at the same time.
  const unfinished = `${file}-${process.pid}`
  writeFileSync(unfinished, `${JSON.stringify({ ...readKeptHeads(file), [identity]: head }, null, 2)}\n`, {
    mode: 0o600,
  })
  renameSync(unfinished, file)
}
