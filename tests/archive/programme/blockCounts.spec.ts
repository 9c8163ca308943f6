import type Database from 'better-sqlite3'
import { beforeEach, expect, it } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { storeRecord } from '#archive/core/recordKind.ts'
import { readRecords } from '#archive/core/recordTable.ts'
import { refreshSpecimens } from '#archive/lists/refresh.ts'
import { allocateStudy } from '#archive/programme/allocateStudy.ts'
import { allocatedOf, cellCounts, countsOfStudies, sumOf } from '#archive/programme/blockCounts.ts'
import { addGlueUp } from '#archive/programme/glueUp/glueUps.ts'
import { addStudy } from '#archive/programme/studies.ts'
import { blockKind } from '#archive/programme/studyKinds.ts'
import { storeSpecimens } from '#archive/specimens/specimens.ts'
import { typedResultDecisionKind, typedResultKind } from '#archive/specimens/typedResultKinds.ts'
import { withdrawalKind } from '#archive/specimens/withdrawals.ts'
import { glueUpFields } from '#contract/programme/glueUp.ts'
import { newGluedBlock } from '#contract/programme/glueUpProcedures.ts'
import { madeStudy } from '#tests/domain/programme/study/madeStudy.ts'
import { archiveInMemory, morning, storeBreak } from '../storedStudy.ts'

const signed = { recordedAt: morning, by: 'bench' }
const small = madeStudy({ adhesives: ['casein C1'], exposures: ['loft'], agesMonths: [0], blocksPerCell: 6 })

let database: Database.Database
let studyId: number
/** The specimens of the first five blocks; the sixth is not glued. */
let specimens: number[]
beforeEach(() => {
  database = archiveInMemory()
  studyId = addStudy(database, small, morning, 'bench').studyId
  allocateStudy(
    database,
    () => {},
    () => false,
    studyId,
    morning,
    'bench',
  )
  const blocks = readRecords(database, blockKind, 'ORDER BY block_id LIMIT 5').map(({ blockId }) =>
    newGluedBlock.parse({ blockId, areaMm2: 600 }),
  )
  const fields = glueUpFields.parse({ gluedOn: '2031-03-01' })
  specimens = addGlueUp(database, { ...signed, studyId, fields, blocks, demo: false }, storeSpecimens).specimens.map(
    ({ specimenId }) => specimenId,
  )
})

const counts = () => sumOf(cellCounts(database, studyId))
/** Stores what was recorded of a specimen, whose current row follows. */
function recorded<Stored>(specimenId: number, store: () => Stored): Stored {
  const stored = store()
  refreshSpecimens(database, [specimenId])
  return stored
}
const typed = (specimenId: number) =>
  recorded(specimenId, () =>
    storeRecord(database, typedResultKind, {
      ...{ ...signed, specimenId, source: 'dial', importRunId: null, row: null, column: null, peakN: 4200 },
      ...{ strengthMPa: null, woodFailurePercent: 40, failurePattern: null, brokenOn: '2031-03-15', ageMonths: null },
      ...{ resolutionN: 10, readBy: 'Mara', note: '' },
    }),
  )

it('counts what is allocated, glued and waits', () => {
  expect(counts()).toEqual({ allocated: 6, glued: 5, waiting: 5, broken: 0, lost: 0 })
  expect(countsOfStudies(database).get(studyId)).toEqual(counts())
  expect(allocatedOf(database, studyId)).toMatchObject({ blocks: 6, boards: new Map() })
})

it('counts a block with a result as broken, of a curve or typed', () => {
  storeBreak(database, specimens[0]!)
  typed(specimens[1]!)
  expect(counts()).toEqual({ allocated: 6, glued: 5, waiting: 3, broken: 2, lost: 0 })
})

it('counts a withdrawn block as lost, until it is taken back', () => {
  const withdraw = (kind: 'withdrawn' | 'taken-back') =>
    recorded(specimens[0]!, () =>
      storeRecord(database, withdrawalKind, { ...signed, reason: 'fell', specimenId: specimens[0]!, kind }),
    )
  withdraw('withdrawn')
  expect(counts()).toEqual({ allocated: 6, glued: 5, waiting: 4, broken: 0, lost: 1 })
  withdraw('taken-back')
  expect(counts().lost).toBe(0)
})

it('counts a block as lost that broke and whose break was set aside', () => {
  const breakId = storeBreak(database, specimens[0]!)
  addDecision(database, {
    ...{ ...signed, breakId, kind: 'set-aside', specimenId: null, cause: 'other', reason: 'a knot' },
  })
  expect(counts()).toEqual({ allocated: 6, glued: 5, waiting: 4, broken: 0, lost: 1 })
})

it('counts a block as lost whose only typed result was set aside, and as waiting where that was of another block', () => {
  const { typedResultId } = typed(specimens[0]!)
  const setAside = (cause: 'other' | 'wrong-block') =>
    recorded(specimens[0]!, () =>
      storeRecord(database, typedResultDecisionKind, {
        ...{ ...signed, typedResultId, reason: 'misread', kind: 'set-aside', cause },
      }),
    )
  setAside('other')
  expect(counts()).toMatchObject({ waiting: 4, broken: 0, lost: 1 })
  setAside('wrong-block')
  expect(counts()).toMatchObject({ waiting: 5, broken: 0, lost: 0 })
})
