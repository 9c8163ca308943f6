import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'
import { specimenFields } from '#contract/specimens/specimen.ts'

/** A real archive in a folder of its own, and the way to be rid of both. */
export async function temporaryArchive(): Promise<{ archive: Archive; path: string; remove(): Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'breakledger-engine-'))
  const path = join(folder, 'test.breakledger')
  const archive = await openArchive({ path, program: 'test' })
  return {
    archive,
    path,
    async remove() {
      await archive.close()
      await rm(folder, { recursive: true, force: true })
    },
  }
}

/** Adds invented beech blocks with these numbers; returns their ids. */
export async function addBlocks(archive: Archive, numbers: readonly string[]): Promise<number[]> {
  const fields = numbers.map((number) =>
    specimenFields.parse({ number, adhesive: 'casein C1', areaMm2: 600, demo: true }),
  )
  const added = await archive.addSpecimens(fields, '2031-04-06T08:00:00.000Z', 'test')
  return added.map(({ specimenId }) => specimenId)
}
