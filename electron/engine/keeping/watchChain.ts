import type { Archive } from '#archive/archive.ts'
import type { HeadFinding } from '#contract/keeping/archive.ts'
import { headOf, keptFinding } from './heldHead.ts'
import { keepHead } from './keptHeads.ts'

/** What watches an archive's chain; `finding` is null where the chain holds the head that was kept of it, or none was. */
export type ChainWatch = { finding: HeadFinding | null; close(): Promise<void> }

/**
 * Holds the chain against the head that was kept outside the file, and keeps its new head whenever a record was written. Where
 * it is shorter or another, or another archive lay in its place, the kept head stays what it was, so that every opening says so until a person accepts it.
 */
export async function watchChain(archive: Archive, file: string): Promise<ChainWatch> {
  const finding = (await keptFinding(archive, file))?.finding ?? null
  if (finding !== null) return { finding, close: async () => {} }
  let working: Promise<void> | null = null
  let again = false
  const keepOnce = async () => {
    do {
      again = false
      const held = await headOf(archive)
      if (held !== null) keepHead(file, held.identity, { ...held.head, path: held.path })
    } while (again)
  }
  const keep = () => {
    again = true
    working ??= keepOnce()
      // A full or read-only disk for settings must not stop a capture: the older head stays, and vouches for less.
      .catch(() => {})
      .finally(() => {
        working = null
      })
    return working
  }
  await keep()
  const leave = archive.onChange(() => void keep())
  return {
    finding,
    async close() {
      leave()
      await keep()
    },
  }
}
