import type { GluedBlock, GlueUp } from '#contract/programme/glueUp.ts'
import type { NewGluedBlock } from '#contract/programme/glueUpProcedures.ts'
import type { Block, StudyFields } from '#contract/programme/study.ts'
import type { Specimen, SpecimenFields } from '#contract/specimens/specimen.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { nameNew } from '../../catalogue/newNames.ts'
import { writtenOfGlueUp } from '../../catalogue/written.ts'
import type { Database } from '../../core/database.ts'
import { prepared } from '../../core/prepared.ts'
import { storeRecord } from '../../core/recordKind.ts'
import { readRecord } from '../../core/recordTable.ts'
import { conflict } from '../../core/recordTrouble.ts'
import { inTransaction } from '../../core/transaction.ts'
import { refreshSpecimens } from '../../lists/refresh.ts'
import { takeRunning } from '../runningNumbers.ts'
import { gluedBlockKind, glueUpKind } from '../sessionKinds.ts'
import { newestStudy } from '../studies.ts'
import { blockKind, labelKind } from '../studyKinds.ts'

/** How the archive stores new specimens, whose current rows are then still to be made. */
export type StoreSpecimens = (
  database: Database,
  list: readonly SpecimenFields[],
  recordedAt: string,
  by: string,
) => Specimen[]

export type NewGlueUp = Omit<GlueUp, 'glueUpId'> & {
  blocks: readonly NewGluedBlock[]
  /** Invented, whatever the study says: the archive is that of the demo. */
  demo: boolean
}

/**
 * Stores a glue-up and makes a specimen of each of its blocks, all or nothing: a planned block gets its label as number and what
 * the study says of it, one of no study what is given, with the next short number where it has none of its own. Throws the
 * trouble "conflict" for a block that was glued before, of another study, or named twice.
 */
export function addGlueUp(
  database: Database,
  { blocks, demo, ...record }: NewGlueUp,
  storeSpecimens: StoreSpecimens,
): { glueUpId: number; specimens: Specimen[] } {
  return inTransaction(database, () => {
    const study = record.studyId === null ? null : newestStudy(database, record.studyId).fields
    nameNew(database, writtenOfGlueUp(record.fields), record.recordedAt, record.by)
    const glueUp = storeRecord(database, glueUpKind, record)
    refuseNamedTwice(blocks)
    const planned = blocks.map((one) => ('blockId' in one ? blockToGlue(database, one.blockId, record.studyId) : null))
    const written = blocks.flatMap((one) => ('blockId' in one ? [] : [one.number]))
    const runnings = takeRunning(database, written.filter((number) => number === '').length, written)
    const labels = [...runnings]
    const list = blocks.map((one, at) => {
      const common = { ...sizeOf(one), ...gluedWith(glueUp, nameIn(one, planned[at]!)) }
      if ('blockId' in one) return ofStudy(planned[at]!, study!, { ...common, demo: demo || study!.demo })
      const number = one.number === '' ? labelOf(labels.shift()!)! : one.number
      const { asPlanned: _asPlanned, ...given } = one
      return { ...given, ...common, number, demo }
    })
    const specimens = storeSpecimens(database, list, record.recordedAt, record.by)
    for (const [at, { specimenId }] of specimens.entries()) {
      const blockId = planned[at]?.blockId ?? null
      storeRecord(database, gluedBlockKind, { ...ofGlueUp(glueUp), blockId, specimenId })
      const one = blocks[at]!
      if (!('blockId' in one) && one.number === '')
        storeRecord(database, labelKind, {
          ...{ running: runnings.shift()!, specimenId },
          ...{ recordedAt: record.recordedAt, by: record.by },
        })
    }
    refreshSpecimens(
      database,
      specimens.map(({ specimenId }) => specimenId),
    )
    return { glueUpId: glueUp.glueUpId, specimens }
  })
}

const ofGlueUp = ({ glueUpId, recordedAt }: GlueUp): Pick<GluedBlock, 'glueUpId' | 'recordedAt'> => ({
  glueUpId,
  recordedAt,
})

function refuseNamedTwice(blocks: readonly NewGluedBlock[]): void {
  const ids = blocks.flatMap((one) => ('blockId' in one ? [one.blockId] : []))
  if (new Set(ids).size < ids.length)
    throw conflict('A block is named twice.', 'Give each block one line of the table.')
}

function blockToGlue(database: Database, blockId: number, studyId: number | null): Block {
  const block = readRecord(database, blockKind, blockId)
  const number = labelOf(block.running)
  if (block.studyId !== studyId)
    throw conflict(`Block ${number} belongs to another study.`, 'Glue the blocks of one study in one session.')
  const glued = prepared<{ glue_up_id: number }>(database, 'SELECT glue_up_id FROM glued_block WHERE block_id = ?')
  if (glued.get(blockId) !== undefined)
    throw conflict(
      `Block ${number} was glued already.`,
      'Nothing was stored. Load the blocks again and leave that one out.',
    )
  // Somebody entered it after the block was planned
  const taken = prepared(database, 'SELECT 1 FROM specimen_current WHERE number_folded = ?')
  if (taken.get(number) !== undefined)
    throw conflict(
      `There is a specimen with the number ${number} of a planned block.`,
      'Nothing was stored. Correct the number of that specimen, then glue the block.',
    )
  return block
}

function nameIn(one: NewGluedBlock, planned: Block | null): string {
  return 'blockId' in one ? planned!.adhesive : one.adhesive
}

function sizeOf({ overlapLengthMm, overlapWidthMm, areaMm2, place, asPlanned }: NewGluedBlock) {
  return { overlapLengthMm, overlapWidthMm, areaMm2, place, notes: asPlanned ? sizeAsPlanned : '' }
}

/** What the notes of a block say that nobody measured. */
const sizeAsPlanned = 'Size as planned, not measured.'

function gluedWith({ fields }: GlueUp, adhesive: string) {
  const lot = fields.lots.find((one) => one.adhesive === adhesive)?.lot ?? ''
  return { lot, gluedOn: fields.gluedOn }
}

type Given = Pick<
  SpecimenFields,
  'lot' | 'gluedOn' | 'overlapLengthMm' | 'overlapWidthMm' | 'areaMm2' | 'place' | 'notes' | 'demo'
>

function ofStudy({ running, adhesive, jointType, exposure, gapMm, board }: Block, study: StudyFields, given: Given) {
  return {
    ...{ number: labelOf(running)!, adhesive, jointType, exposure, bondLineGapMm: gapMm },
    ...{ wood: study.wood, board },
    ...given,
  }
}
