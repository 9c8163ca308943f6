import type { Database } from '#archive/core/database.ts'
import { storeRecord } from '#archive/core/recordKind.ts'
import { inTransaction } from '#archive/core/transaction.ts'
import { addGlueUp } from '#archive/programme/glueUp/glueUps.ts'
import { takeRunning } from '#archive/programme/runningNumbers.ts'
import { blockKind, studyKind } from '#archive/programme/studyKinds.ts'
import { storeSpecimens } from '#archive/specimens/specimens.ts'
import { glueUpFields } from '#contract/programme/glueUp.ts'
import { type NewGluedBlock, newGluedBlock } from '#contract/programme/glueUpProcedures.ts'
import { type Block, type StudyFields, studyFields } from '#contract/programme/study.ts'
import { morning } from './storedStudy.ts'

const signed = { recordedAt: morning, by: 'bench' }

/** A planned study of the invented boatyard school: casein and resorcinol in the loft, pulled at once and at three months. */
export function storeStudy(database: Database, change: Partial<StudyFields> = {}): number {
  const fields = studyFields.parse({
    title: 'Loft and bilge',
    adhesives: ['casein C1', 'resorcinol R2'],
    jointTypes: ['long grain to long grain'],
    gapsMm: [0],
    exposures: ['loft'],
    agesMonths: [0, 3],
    blocksPerCell: 3,
    overlapLengthMm: 30,
    overlapWidthMm: 20,
    wood: 'beech',
    seed: 1,
    ...change,
  })
  return inTransaction(database, () => {
    const studyId = 1 + Number(database.prepare('SELECT count(DISTINCT study_id) FROM study_revision').pluck().get())
    storeRecord(database, studyKind, { studyId, revision: 1, ...signed, reason: '', fields })
    return studyId
  })
}

/** Plans blocks of a study, each with what it does not have in common with the others. */
export function storeBlocks(database: Database, studyId: number, blocks: readonly Partial<Block>[]): number[] {
  const common = {
    ...{ studyId, ...signed, adhesive: 'casein C1', jointType: 'long grain to long grain', gapMm: 0 },
    ...{ exposure: 'loft', ageMonths: 0, board: 'board 1', breakingOrder: 0 },
  }
  return inTransaction(database, () =>
    takeRunning(database, blocks.length).map(
      (running, at) => storeRecord(database, blockKind, { ...common, running, ...blocks[at]! }).blockId,
    ),
  )
}

/** Glues planned blocks; returns their specimens. */
export function glueBlocks(
  database: Database,
  studyId: number,
  blockIds: readonly number[],
  gluedOn = '2031-03-01',
): number[] {
  const blocks: NewGluedBlock[] = blockIds.map((blockId) => newGluedBlock.parse({ blockId, areaMm2: 600 }))
  const fields = glueUpFields.parse({ gluedOn })
  return addGlueUp(database, { ...signed, studyId, fields, blocks, demo: false }, storeSpecimens).specimens.map(
    ({ specimenId }) => specimenId,
  )
}
