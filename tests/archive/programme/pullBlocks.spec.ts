import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { pullBlocks } from '#archive/programme/pullBlocks.ts'
import { addPullDecision } from '#archive/programme/pullDecisions.ts'
import { moveSpecimens } from '#archive/specimens/manySpecimens.ts'
import { pulledStudy } from '../pulledStudy.ts'
import { glueBlocks, storeBlocks, storeStudy } from '../storedProgramme.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

let database: Database.Database
beforeEach(() => {
  database = archiveInMemory()
})

const signed = { by: 'bench', reason: 'moved' }
const move = (specimenIds: number[], place: string) =>
  moveSpecimens(
    database,
    () => {},
    () => false,
    specimenIds,
    place,
    morning,
    signed,
  )
const common = { adhesive: 'casein C1', jointType: 'long grain to long grain', gapMm: 0, exposure: 'loft' }

describe('what a pull takes from the shelf', () => {
  it('is every block that waits, by what it is and where it lies', () => {
    const studyId = storeStudy(database)
    const blocks = storeBlocks(database, studyId, [{}, {}, {}, { adhesive: 'resorcinol R2' }, { ageMonths: 3 }])
    const specimenIds = glueBlocks(database, studyId, blocks)
    move(specimenIds.slice(1), 'shelf 2')
    const pull = { studyId, gluedOn: '2031-03-01', ageMonths: 0 }
    expect(pullBlocks(database, [pull, { ...pull, ageMonths: 3 }, { ...pull, ageMonths: 6 }])).toEqual([
      [
        { ...common, place: '', blocks: 1 },
        { ...common, place: 'shelf 2', blocks: 2 },
        { ...common, adhesive: 'resorcinol R2', place: 'shelf 2', blocks: 1 },
      ],
      [{ ...common, place: 'shelf 2', blocks: 1 }],
      [],
    ])
  })

  it('leaves out what is broken or lost, and is so many spares where the pull was added', () => {
    const { studyId } = pulledStudy(database)
    const pull = { studyId, gluedOn: '2030-08-31', ageMonths: 6 }
    addPullDecision(database, {
      ...{ ...pull, ageMonths: 9, kind: 'added', dueOn: null, blocksPerSeries: 1, recordedAt: morning },
      ...{ by: 'bench', reason: 'a look between' },
    })
    const found = pullBlocks(
      database,
      [0, 6, 9].map((ageMonths) => ({ ...pull, ageMonths })),
    )
    expect(found.map((groups) => groups.map(({ blocks }) => blocks))).toEqual([[], [2], [1]])
  })

  it('is what is planned before any of it is glued', () => {
    const studyId = storeStudy(database)
    storeBlocks(database, studyId, [{}, {}, { ageMonths: 3 }])
    expect(pullBlocks(database, [{ studyId, gluedOn: null, ageMonths: 0 }])).toEqual([
      [{ ...common, place: '', blocks: 2 }],
    ])
  })
})
