import type { ImportedFile, JudgedBlock, ReadBlock } from '#contract/specimens/importedResult.ts'
import { importStopped } from '#contract/specimens/importProcedures.ts'
import type { ImportRun, TypedResult } from '#contract/specimens/typedResult.ts'
import type { Progress } from '#contract/tasks.ts'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import type { Database } from '../../core/database.ts'
import { storeRecord } from '../../core/recordKind.ts'
import { touch } from '../../core/touched.ts'
import { inTransaction } from '../../core/transaction.ts'
import { refreshSpecimens } from '../../lists/refresh.ts'
import { correctSpecimen, specimenRevisions, storeSpecimens } from '../specimens.ts'
import { importRunKind, typedResultKind } from '../typedResultKinds.ts'
import { judgeImport } from './judgeImport.ts'
import { isOpenSpecimen } from './knownBlocks.ts'
import { broughtInAgain, resultOf, specimenOf } from './storedBlock.ts'

/** An import as it is asked for: the blocks of a table that could be read, with where they come from and who brings them in. */
export type NewImport = {
  file: ImportedFile
  /** The mapping with the sheet that was read. */
  mapping: ImportRun['mapping']
  blocks: readonly ReadBlock[]
  recordedAt: string
  by: string
  /** Into an archive of the demo, where everything is invented. */
  demo: boolean
}

/** Gives numbers of our own to specimens that have none, and keeps which specimen has which. */
export type OwnNumbers = {
  /** None of those that are written on others of the same import. */
  next(database: Database, count: number, written: readonly string[]): { running: number; number: string }[]
  keep(database: Database, label: { running: number; specimenId: number; recordedAt: string; by: string }): void
}

const atOnce = 500

/**
 * Brings the new blocks of a table in: all of them or, where it is stopped or fails, none. Returns what became of each. Where
 * none is new, nothing is recorded. No sample of a running capture can be stored meanwhile. Throws the trouble "cancelled" when
 * it is stopped.
 */
export function storeImport(
  database: Database,
  ownNumbers: OwnNumbers,
  made: NewImport,
  onProgress: (progress: Progress) => void,
  isCancelled: () => boolean,
): JudgedBlock[] {
  return inTransaction(database, () => {
    const judged = judgeImport(database, made.file, made.blocks)
    const places = judged.flatMap(({ fate }, place) => (fate === 'new' ? [place] : []))
    if (places.length === 0) return judged
    const { recordedAt, by } = made
    const { fileName, fileSha256 } = made.file
    const run = storeRecord(database, importRunKind, { recordedAt, by, fileName, fileSha256, mapping: made.mapping })
    for (let done = 0; done < places.length; done += atOnce) {
      onProgress({ task: 'import', done, total: places.length })
      if (isCancelled()) throw importStopped()
      storeSome(database, ownNumbers, made, run.importRunId, judged, places.slice(done, done + atOnce))
    }
    onProgress({ task: 'import', done: places.length, total: places.length })
    touch(database, 'specimens')
    return judged
  })
}

function storeSome(
  database: Database,
  ownNumbers: OwnNumbers,
  { file, blocks, recordedAt, by, demo }: NewImport,
  importRunId: number,
  judged: JudgedBlock[],
  places: readonly number[],
): void {
  const lacking = places.filter((place) => judged[place]!.specimenId === null)
  for (const place of places) {
    const { specimenId, number } = judged[place]!
    if (specimenId === null || !isOpenSpecimen(database, specimenId)) continue
    const fields = specimenOf(blocks[place]!.values, number!, demo)
    if (canonicalJson(fields) !== canonicalJson(specimenRevisions(database, specimenId).at(-1)!.fields))
      correctSpecimen(database, specimenId, fields, recordedAt, by, broughtInAgain(file.fileName))
  }
  const unnumbered = lacking.filter((place) => judged[place]!.number === null)
  const written = unnumbered.length === 0 ? [] : judged.flatMap(({ number }) => number ?? [])
  const given = ownNumbers.next(database, unnumbered.length, written)
  const labels = new Map(unnumbered.map((place, index) => [place, given[index]!]))
  const fields = lacking.map((place) =>
    specimenOf(blocks[place]!.values, judged[place]!.number ?? labels.get(place)!.number, demo),
  )
  const specimens = storeSpecimens(database, fields, recordedAt, by)
  for (const [index, { specimenId, fields }] of specimens.entries()) {
    const place = lacking[index]!
    judged[place] = { ...judged[place]!, specimenId, number: fields.number }
    const label = labels.get(place)
    if (label !== undefined) ownNumbers.keep(database, { running: label.running, specimenId, recordedAt, by })
  }
  for (const place of places) {
    const { row, column, values } = blocks[place]!
    const result: Omit<TypedResult, 'typedResultId'> = {
      ...resultOf(values),
      ...{ recordedAt, by, specimenId: judged[place]!.specimenId!, source: 'import', importRunId, row, column },
      ...{ resolutionN: null, readBy: '' },
    }
    storeRecord(database, typedResultKind, result)
  }
  refreshSpecimens(
    database,
    places.map((place) => judged[place]!.specimenId!),
  )
}
