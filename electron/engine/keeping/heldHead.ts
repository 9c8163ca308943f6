import type { Archive } from '#archive/archive.ts'
import type { ChainHead, HeadFinding, KeptHead } from '#contract/keeping/archive.ts'
import { readKeptHeads } from './keptHeads.ts'

/** What there is to hold an open archive by: its identity, its head, and where it lies. */
export type HeldArchive = { identity: string; head: ChainHead; path: string }

type Asked = Pick<Archive, 'chainIdentity' | 'chainHead' | 'heldAgainst' | 'info'>

/** The identity and the head of an open archive, with its place; null: it has no entry yet. */
export async function headOf(archive: Asked): Promise<HeldArchive | null> {
  const [identity, head, { path }] = [await archive.chainIdentity(), await archive.chainHead(), await archive.info()]
  return identity === null || head === null ? null : { identity, head, path }
}

/** How an archive fails to be the one whose head was kept, and that head; null: it is as it was, or nothing was kept. */
export async function keptFinding(
  archive: Asked,
  file: string,
): Promise<{ finding: HeadFinding; kept: KeptHead } | null> {
  const [held, heads] = [await headOf(archive), readKeptHeads(file)]
  if (held === null) return null
  const kept = heads[held.identity]
  const finding = kept === undefined ? null : await archive.heldAgainst(kept)
  if (kept !== undefined && finding !== null) return { finding, kept }
  const before = Object.entries(heads).find(([identity, { path }]) => path === held.path && identity !== held.identity)
  // One that was only just made holds nothing that could be taken for what lay there before.
  return before === undefined || held.head.count === 1 ? null : { finding: 'other', kept: before[1] }
}
