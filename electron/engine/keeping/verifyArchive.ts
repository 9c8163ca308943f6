// Held by tests/shells/commands/verifyCommand.spec.ts.
import type { Archive } from '#archive/archive.ts'
import type { ChainHead, HeadFinding, VerifyReport } from '#contract/keeping/archive.ts'
import type { Progress } from '#contract/tasks.ts'
import { readArchive } from '../core/readArchive.ts'
import { headOf, keptFinding } from './heldHead.ts'
import { keepHead } from './keptHeads.ts'

/** What the head of the chain is held against. */
export type HeldHeads = {
  /** The file that the program keeps heads in. */
  keptIn: string
  /** A head that a person wrote down; null: none. */
  writtenDown: Pick<ChainHead, 'count' | 'hash'> | null
  /** Take the chain as it is from now on, if nothing else is wrong with it. */
  accept: boolean
}

const notHeld = {
  shorter: 'the chain is shorter than that: its last records are not in this file',
  different: 'the chain has another entry at that place: records were changed, or this is another archive',
  other: 'another archive lay in this place: two were swapped, or one was put in the place of the other',
} as const

/** Checks an archive that another program may be writing to, and its chain against the heads that are kept elsewhere. */
export function verifyArchive(
  path: string,
  program: string,
  heads: HeldHeads,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<VerifyReport> {
  return readArchive(path, program, async (archive) => {
    const report = await archive.verify(onProgress, signal)
    // What cannot be read at all has been named.
    if (report.head === null) return report
    const faults = [...report.faults, ...(await headFaults(archive, heads, report.sound))]
    return { ...report, faults, sound: faults.length === 0 }
  })
}

async function headFaults(archive: Archive, heads: HeldHeads, sound: boolean): Promise<VerifyReport['faults']> {
  const faults: VerifyReport['faults'] = []
  const note = (name: string, { count, hash }: Pick<ChainHead, 'count' | 'hash'>, finding: HeadFinding) =>
    faults.push({ where: `${name} ${count}:${hash}`, what: notHeld[finding] })
  if (heads.writtenDown !== null) {
    const finding = await archive.heldAgainst(heads.writtenDown)
    if (finding !== null) note('head written down', heads.writtenDown, finding)
  }
  const held = await headOf(archive)
  if (heads.accept && sound && faults.length === 0 && held !== null)
    keepHead(heads.keptIn, held.identity, { ...held.head, path: held.path })
  const found = await keptFinding(archive, heads.keptIn)
  if (found !== null) note('head kept by the program', found.kept, found.finding)
  return faults
}
