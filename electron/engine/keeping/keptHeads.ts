import { readFileSync } from 'node:fs'
import { type KeptHead, keptHeadsFile } from '#contract/keeping/archive.ts'
import { changeFile } from './keptFile.ts'

/** The heads of chains that are kept outside the archives, by the identity of each; none where there is no such file yet. */
export function readKeptHeads(file: string): Record<string, KeptHead> {
  try {
    return keptHeadsFile.parse(JSON.parse(readFileSync(file, 'utf8')))
  } catch {
    // A file that is not there or cannot be read can vouch for nothing; it is written anew.
    return {}
  }
}

/** Keeps the head of one chain. One archive lies in one place. */
export function keepHead(file: string, identity: string, head: KeptHead): void {
  changeFile(file, () => ({ ...elsewhere(file, head.path), [identity]: head }))
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
