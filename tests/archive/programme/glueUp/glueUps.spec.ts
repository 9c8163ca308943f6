import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { glueUp, glueUpPlan, glueUps, studiesToGlue } from '#archive/programme/glueUp/glueUpLists.ts'
import { addGlueUp } from '#archive/programme/glueUp/glueUps.ts'
import { specimen } from '#archive/specimens/specimenRecords.ts'
import { addSpecimen, storeSpecimens } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { glueUpFields } from '#contract/programme/glueUp.ts'
import { newGluedBlock } from '#contract/programme/glueUpProcedures.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { storeBlocks, storeStudy } from '../../storedProgramme.ts'
import { archiveInMemory, morning, specimenFields } from '../../storedStudy.ts'

let database: Database.Database
beforeEach(() => {
  database = archiveInMemory()
})

const fields = glueUpFields.parse({
  gluedOn: '2031-03-01',
  temperatureC: 19,
  lots: [
    { adhesive: 'casein C1', lot: 'C1-lot-2' },
    { adhesive: 'resorcinol R2', lot: 'R2-lot-7' },
  ],
})
const glue = (studyId: number | null, blocks: readonly object[], demo = false) =>
  addGlueUp(
    database,
    { recordedAt: morning, by: 'bench', studyId, fields, blocks: blocks.map((one) => newGluedBlock.parse(one)), demo },
    storeSpecimens,
  )
const counts = () =>
  ['glue_up', 'glued_block', 'specimen_revision', 'label'].map((table) =>
    database.prepare(`SELECT count(*) FROM ${table}`).pluck().get(),
  )
const measured = { overlapLengthMm: 30.1, overlapWidthMm: 19.9, areaMm2: 598.99, place: 'loft shelf 2' }

describe('a glue-up', () => {
  it('makes a specimen of each planned block, with its label as number and what study and calipers say of it', () => {
    const studyId = storeStudy(database)
    const [casein, resorcinol] = storeBlocks(database, studyId, [
      { board: 'board 4' },
      { adhesive: 'resorcinol R2', ageMonths: 3 },
    ])
    const { specimens } = glue(studyId, [
      { blockId: casein, ...measured },
      { blockId: resorcinol, overlapLengthMm: 30, overlapWidthMm: 20, areaMm2: 600, asPlanned: true },
    ])
    expect(specimens.map(({ fields }) => fields)).toEqual([
      {
        ...{ number: labelOf(2), adhesive: 'casein C1', lot: 'C1-lot-2', jointType: 'long grain to long grain' },
        ...{ exposure: 'loft', bondLineGapMm: 0, ...measured, gluedOn: '2031-03-01', wood: 'beech', board: 'board 4' },
        ...{ notes: '', demo: false },
      },
      expect.objectContaining({ number: labelOf(3), lot: 'R2-lot-7', notes: 'Size as planned, not measured.' }),
    ])
  })

  it('refuses a block that was glued already, and then stores nothing at all', () => {
    const studyId = storeStudy(database)
    const [first, second] = storeBlocks(database, studyId, [{}, {}])
    glue(studyId, [{ blockId: first }])
    const before = counts()
    expect(() => glue(studyId, [{ blockId: second }, { blockId: first }])).toThrow(/glued already/)
    expect(counts()).toEqual(before)
  })

  it('refuses a block that is named twice, and one of another study', () => {
    const studyId = storeStudy(database)
    const [block] = storeBlocks(database, studyId, [{}])
    expect(() => glue(studyId, [{ blockId: block }, { blockId: block }])).toThrow(/named twice/)
    expect(() => glue(storeStudy(database), [{ blockId: block }])).toThrow(/another study/)
    expect(counts()).toEqual([0, 0, 0, 0])
  })

  it('stores nothing where a number is taken', () => {
    addSpecimen(database, specimenFields('K-7'), morning, '')
    const before = counts()
    expect(() =>
      glue(null, [
        { number: 'K-8', adhesive: 'hide' },
        { number: 'k-7', adhesive: 'hide' },
      ]),
    ).toThrow(/K-7|k-7/)
    expect(counts()).toEqual(before)
  })

  it('says what to do where a specimen was entered under the number of a planned block', () => {
    const studyId = storeStudy(database)
    const [block] = storeBlocks(database, studyId, [{}])
    addSpecimen(database, specimenFields(labelOf(2)!), morning, '')
    expect(() => glue(studyId, [{ blockId: block }])).toThrow(/number 28 of a planned block/)
  })

  it('gives a block of no study no short number that is written on another of them', () => {
    const { specimens } = glue(null, [{ adhesive: 'hide' }, { number: '28', adhesive: 'hide' }])
    expect(specimens.map((one) => one.fields.number)).toEqual(['36', '28'])
  })

  it('gives blocks of no study the number written on them, or the next short number', () => {
    const studyId = storeStudy(database)
    storeBlocks(database, studyId, [{}])
    const { specimens } = glue(null, [
      { number: 'K-7', adhesive: 'hide', exposure: 'bilge', ...measured },
      { adhesive: 'casein C1' },
      { adhesive: 'casein C1' },
    ])
    const numbers = specimens.map((one) => one.fields.number)
    expect(numbers).toEqual(['K-7', labelOf(3), labelOf(4)])
    expect(specimens[0]!.fields).toMatchObject({ lot: '', exposure: 'bilge', place: 'loft shelf 2' })
    expect(specimens[1]!.fields).toMatchObject({ lot: 'C1-lot-2', gluedOn: '2031-03-01' })
    expect(counts()).toEqual([1, 3, 3, 2])
  })

  it('marks its specimens as invented in the demo archive, and those of a demo study', () => {
    expect(glue(null, [{ adhesive: 'hide' }], true).specimens[0]!.fields.demo).toBe(true)
    const studyId = storeStudy(database, { demo: true })
    const [block] = storeBlocks(database, studyId, [{}])
    expect(glue(studyId, [{ blockId: block }]).specimens[0]!.fields.demo).toBe(true)
  })

  it('is read back with its specimens, newest first in the list, and holds in the check of the archive', () => {
    const studyId = storeStudy(database)
    const [first, second] = storeBlocks(database, studyId, [{ ageMonths: 3 }, {}])
    expect(studiesToGlue(database)).toEqual([{ studyId, title: 'Loft and bilge', startOn: null, toGlue: 2 }])
    const { glueUpId, specimens } = glue(studyId, [{ blockId: first, ...measured }])
    glue(null, [{ adhesive: 'hide' }])
    expect(glueUps(database).map(({ studyTitle, blocks }) => [studyTitle, blocks])).toEqual([
      [null, 1],
      ['Loft and bilge', 1],
    ])
    expect(glueUp(database, glueUpId).specimens).toEqual([
      {
        ...{
          specimenId: specimens[0]!.specimenId,
          board: 'board 1',
          number: labelOf(2),
          adhesive: 'casein C1',
          exposure: 'loft',
        },
        ...{ ageMonths: 3, ...measured },
      },
    ])
    expect(glueUpPlan(database, studyId)).toMatchObject({
      wood: 'beech',
      overlapLengthMm: 30,
      blocks: [{ blockId: second }],
    })
    const { current, glued } = specimen(database, specimens[0]!.specimenId)
    expect(current.timesBroken).toBe(0)
    expect(glued).toEqual({ glueUpId, gluedOn: '2031-03-01', studyId, studyTitle: 'Loft and bilge', ageMonths: 3 })
    expect(verify(database, () => {}).faults).toEqual([])
  })
})
