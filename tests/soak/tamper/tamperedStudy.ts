import { copyFileSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Archive } from '#archive/archive.ts'
import type { ChainHead } from '#contract/keeping/archive.ts'
import { openOwnArchive } from '#engine/core/realParts.ts'
import { watchChain } from '#engine/keeping/watchChain.ts'
import { evaluationOf, header, morning, rampAndFall, session, specimenFields } from '../../archive/storedStudy.ts'

const program = 'breakledger soak'

/** Files of a shop: two archives, an older copy of the first, and the heads that the program keeps of both. */
export type Place = {
  readonly study: string
  readonly other: string
  readonly older: string
  readonly heads: string
  /** The head of the first archive as a person wrote it down. */
  readonly noted: ChainHead
}

/** How the program ended: it closed the archive, or was killed with the newest records in the journal alone. */
export type Ended = 'closed' | 'killed'

/** Makes both archives in a folder; `reset` puts all files back as they were after the program had ended. */
export async function tamperedStudy(folder: string): Promise<{ place: Place; reset(ended: Ended): void }> {
  mkdirSync(folder, { recursive: true })
  const [study, other, older, heads] = ['study', 'other', 'older', 'heads.json'].map((name) => join(folder, name)) as [
    string,
    string,
    string,
    string,
  ]
  await written(other, heads, async (archive) => {
    await fill(archive, ['F6-LL-1', 'F6-LL-2'])
  })
  await written(study, heads, async (archive) => {
    await fill(archive, ['C1-LL-1', 'C1-LL-2'])
  })
  copyFileSync(study, older)
  const whole: Record<Ended, Map<string, Buffer>> = { closed: new Map(), killed: new Map() }
  let noted: ChainHead | null = null
  await written(study, heads, async (archive, settled) => {
    await fill(archive, ['C1-LL-3', 'C1-LL-4'])
    await archive.settle()
    await archive.addSpecimen(specimenFields('C1-LL-5'), morning, 'bench')
    const { sessionId } = await archive.beginSession(session)
    const { breakId } = await archive.beginBreak(header(sessionId, 1))
    await archive.appendSamples(breakId, rampAndFall(100, 400_000))
    await archive.addSpecimen(specimenFields('C1-LL-6'), morning, 'bench')
    noted = await archive.chainHead()
    await settled()
    whole.killed = filesOf([study, `${study}-wal`, other, older, heads])
  })
  whole.closed = filesOf([study, other, older, heads])
  return {
    place: { study, other, older, heads, noted: noted! },
    reset(ended) {
      rmSync(folder, { recursive: true, force: true })
      mkdirSync(folder, { recursive: true })
      for (const [file, bytes] of whole[ended]) writeFileSync(file, bytes)
    },
  }
}

async function written(
  path: string,
  heads: string,
  work: (archive: Archive, settled: () => Promise<void>) => Promise<void>,
) {
  const archive = await openOwnArchive(path, program)
  const watch = await watchChain(archive, heads)
  await work(archive, watch.close)
  await watch.close()
  await archive.close()
}

async function fill(archive: Archive, numbers: readonly string[]) {
  for (const number of numbers) {
    const { specimenId } = await archive.addSpecimen(specimenFields(number), morning, 'bench')
    const { sessionId } = await archive.beginSession(session)
    await archive.keepRejectedLines(sessionId, morning, 2, new TextEncoder().encode('?'))
    const { breakId } = await archive.beginBreak(header(sessionId, specimenId))
    const curve = rampAndFall(300, 500_000)
    await archive.appendSamples(breakId, curve)
    await archive.finishBreak(breakId, morning, 'complete', 0, evaluationOf(curve))
  }
}

function filesOf(paths: readonly string[]): Map<string, Buffer> {
  return new Map(paths.filter((path) => existsSync(path)).map((path) => [path, readFileSync(path)]))
}

/** Puts one file where the other was and the other way round. */
export function swap(one: string, two: string): void {
  renameSync(one, `${one}-aside`)
  renameSync(two, one)
  renameSync(`${one}-aside`, two)
}
