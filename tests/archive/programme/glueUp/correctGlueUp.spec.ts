import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { takeTouched } from '#archive/core/touched.ts'
import { beginBreakingSession } from '#archive/programme/breakingSessions.ts'
import { correctGlueUp } from '#archive/programme/glueUp/correctGlueUp.ts'
import { glueUp } from '#archive/programme/glueUp/glueUpLists.ts'
import { addGlueUp } from '#archive/programme/glueUp/glueUps.ts'
import { specimensOfPulls } from '#archive/programme/orderToBreak.ts'
import { addPullDecision } from '#archive/programme/pullDecisions.ts'
import { pullSources } from '#archive/programme/pulls.ts'
import { study } from '#archive/programme/studies.ts'
import { reviseSpecimens } from '#archive/specimens/manySpecimens.ts'
import { correctSpecimen, specimenRevisions, storeSpecimens } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { glueUpFields } from '#contract/programme/glueUp.ts'
import { newGluedBlock } from '#contract/programme/glueUpProcedures.ts'
import type { PullDecision } from '#contract/programme/pull.ts'
import { studyPulls } from '#domain/programme/calendar/studyPulls.ts'
import { standIn } from '#tests/fakes/time/standIn.ts'
import { storeBlocks, storeStudy } from '../../storedProgramme.ts'
import { archiveInMemory, morning, storeBreak } from '../../storedStudy.ts'

let database: Database.Database
let records = 0
beforeEach(() => {
  database = archiveInMemory()
  records = 0
})

/** A second after the record before. */
const nextInstant = () => new Date(Date.parse(morning) + 1000 * records++).toISOString()

const wrong = { gluedOn: '2030-03-01', temperatureC: 19, lots: [{ adhesive: 'casein C1', lot: 'C1-lot-2' }] }
const right = { ...wrong, gluedOn: '2031-03-01', temperatureC: 16 }
const glue = (studyId: number | null, blocks: readonly object[], fields: object = wrong) =>
  addGlueUp(
    database,
    {
      ...{ recordedAt: nextInstant(), by: 'bench', studyId, demo: false },
      ...{ fields: glueUpFields.parse(fields), blocks: blocks.map((one) => newGluedBlock.parse(one)) },
    },
    storeSpecimens,
  )
const correct = (glueUpId: number, fields: object, reason = 'wrong year') =>
  correctGlueUp(
    database,
    { glueUpId, fields: glueUpFields.parse(fields), recordedAt: nextInstant(), by: 'bench', reason },
    reviseSpecimens,
  )
const pulls = (studyId: number) => pullSources(database, studyId).rows.flatMap((one) => studyPulls(one, '2031-03-02'))
const decide = (change: Partial<PullDecision>) =>
  addPullDecision(database, {
    ...{ recordedAt: nextInstant(), by: 'bench', reason: 'fair', studyId: 1, gluedOn: '2030-03-01', ageMonths: 3 },
    ...{ kind: 'moved', dueOn: '2031-07-01', blocksPerSeries: null, ...change },
  })

describe('a corrected glue-up', () => {
  it('stands as it was corrected, with what was entered and every correction beside it, and the archive is sound', () => {
    const { glueUpId } = glue(null, [{ adhesive: 'casein C1' }])
    correct(glueUpId, right)
    correct(glueUpId, { ...right, temperatureC: 15 }, 'misread')
    const { fields, entered, corrections } = glueUp(database, glueUpId)
    expect(fields).toMatchObject({ gluedOn: '2031-03-01', temperatureC: 15 })
    expect(entered).toMatchObject(wrong)
    expect(corrections.map((one) => [one.fields.temperatureC, one.reason])).toEqual([
      [16, 'wrong year'],
      [15, 'misread'],
    ])
    expect(verify(database, () => {}).faults).toEqual([])
  })

  it('takes day and lot of its specimens along, but for one that was given a day of its own', () => {
    const { glueUpId, specimens } = glue(null, [
      { adhesive: 'casein C1' },
      { adhesive: 'casein C1' },
      { adhesive: 'hide' },
    ])
    const own = specimens[1]!
    correctSpecimen(
      database,
      own.specimenId,
      { ...own.fields, gluedOn: '2031-02-27' },
      morning,
      'bench',
      'glued before',
    )
    correct(glueUpId, { ...right, lots: [{ adhesive: 'casein C1', lot: 'C1-lot-3' }] })
    const now = specimens.map(({ specimenId }) => specimenRevisions(database, specimenId).at(-1)!)
    expect(now.map(({ fields }) => [fields.gluedOn, fields.lot])).toEqual([
      ['2031-03-01', 'C1-lot-3'],
      ['2031-02-27', 'C1-lot-3'],
      ['2031-03-01', ''],
    ])
    expect(now[0]).toMatchObject({ revision: 2, by: 'bench', reason: 'wrong year' })
  })

  it('moves the pulls that are counted from it, under the same keys and with a higher sequence', () => {
    const studyId = storeStudy(database)
    const { glueUpId, specimens } = glue(
      studyId,
      storeBlocks(database, studyId, [{ ageMonths: 3 }]).map((blockId) => ({ blockId })),
    )
    const [before] = pulls(studyId)
    correct(glueUpId, right)
    const [after] = pulls(studyId)
    expect([before!.dueOn, after!.dueOn]).toEqual(['2030-06-01', '2031-06-01'])
    expect(after!.key).toBe(before!.key)
    expect(after!.sequence).toBeGreaterThan(before!.sequence)
    expect(study(database, studyId).glueUps).toEqual([{ glueUpId, gluedOn: '2031-03-01', blocks: 1 }])
    expect(specimensOfPulls(database, [{ studyId, gluedOn: '2031-03-01', ageMonths: 3 }])).toEqual([
      [specimens[0]!.specimenId],
    ])
  })

  it('keeps what was decided about its pulls', () => {
    const studyId = storeStudy(database)
    const blocks = storeBlocks(database, studyId, [{ ageMonths: 3 }, { ageMonths: null }])
    const { glueUpId, specimens } = glue(
      studyId,
      blocks.map((blockId) => ({ blockId })),
    )
    decide({})
    decide({ kind: 'added', ageMonths: 9, dueOn: null, blocksPerSeries: 1 })
    correct(glueUpId, right)
    expect(pulls(studyId).map(({ ageMonths, dueOn, blocks }) => [ageMonths, dueOn, blocks.waiting])).toEqual([
      [3, '2031-07-01', 1],
      [9, '2031-12-01', 1],
    ])
    expect(specimensOfPulls(database, [{ studyId, gluedOn: '2031-03-01', ageMonths: 9 }])).toEqual([
      [specimens[1]!.specimenId],
    ])
  })

  it('leaves what was decided about blocks of another glue-up of that day with those', () => {
    const studyId = storeStudy(database)
    const [first, second] = storeBlocks(database, studyId, [{ ageMonths: 3 }, { ageMonths: 3 }])
    const { glueUpId } = glue(studyId, [{ blockId: first }])
    glue(studyId, [{ blockId: second }])
    decide({})
    correct(glueUpId, right)
    expect(pulls(studyId).map(({ gluedOn, dueOn }) => [gluedOn, dueOn])).toEqual([
      ['2031-03-01', '2031-06-01'],
      ['2030-03-01', '2031-07-01'],
    ])
  })

  it('keeps what was decided about its pulls when others are glued on the day that it had', () => {
    const studyId = storeStudy(database)
    const [first, second] = storeBlocks(database, studyId, [{ ageMonths: 3 }, { ageMonths: 3 }])
    const { glueUpId } = glue(studyId, [{ blockId: first }])
    decide({ kind: 'skipped', dueOn: null })
    correct(glueUpId, right)
    glue(studyId, [{ blockId: second }])
    expect(pulls(studyId).map(({ gluedOn, decision }) => [gluedOn, decision?.kind])).toEqual([
      ['2030-03-01', undefined],
      ['2031-03-01', 'skipped'],
    ])
  })

  it('keeps what was decided about its pulls when it trades days with another', () => {
    const studyId = storeStudy(database)
    const [first, second] = storeBlocks(database, studyId, [{ ageMonths: 3 }, { ageMonths: 3 }])
    const one = glue(studyId, [{ blockId: first }])
    const other = glue(studyId, [{ blockId: second }], right)
    decide({})
    correct(one.glueUpId, right)
    correct(other.glueUpId, wrong)
    expect(pulls(studyId).map(({ gluedOn, dueOn }) => [gluedOn, dueOn])).toEqual([
      ['2030-03-01', '2030-06-01'],
      ['2031-03-01', '2031-07-01'],
    ])
  })

  it('takes what was decided after one correction along with the next', () => {
    const studyId = storeStudy(database)
    const { glueUpId } = glue(
      studyId,
      storeBlocks(database, studyId, [{ ageMonths: 3 }]).map((blockId) => ({ blockId })),
    )
    correct(glueUpId, right)
    decide({ gluedOn: '2031-03-01' })
    correct(glueUpId, { ...right, gluedOn: '2031-03-02' })
    expect(pulls(studyId).map(({ gluedOn, dueOn }) => [gluedOn, dueOn])).toEqual([['2031-03-02', '2031-07-01']])
  })

  it('keeps the spares that were broken in a session of a pull which was added', () => {
    const studyId = storeStudy(database)
    const blocks = storeBlocks(database, studyId, [{ ageMonths: 3 }, { ageMonths: null }, { ageMonths: null }])
    const { glueUpId, specimens } = glue(
      studyId,
      blocks.map((blockId) => ({ blockId })),
    )
    decide({ kind: 'added', ageMonths: 9, dueOn: null, blocksPerSeries: 1 })
    beginBreakingSession(database, {
      ...{ startedAt: morning, by: 'bench', title: 'a look between', specimenIds: [], seed: 1 },
      pulls: [{ studyId, gluedOn: '2030-03-01', ageMonths: 9 }],
    })
    storeBreak(database, specimens[1]!.specimenId)
    correct(glueUpId, right)
    expect(pulls(studyId).filter(({ added }) => added)).toMatchObject([
      { gluedOn: '2031-03-01', blocks: { planned: 1, broken: 1, waiting: 0 } },
    ])
    expect(specimensOfPulls(database, [{ studyId, gluedOn: '2031-03-01', ageMonths: 9 }])).toEqual([[]])
  })

  it('leaves the keys of all other days as they are, and no key gets a lower sequence', () => {
    const studyId = storeStudy(database)
    const blocks = storeBlocks(
      database,
      studyId,
      [3, 3, 3, 3].map((ageMonths) => ({ ageMonths })),
    )
    const days = ['2030-03-01', '2030-03-01', '2030-05-01', '2030-06-01']
    const ids = blocks.map((blockId, at) => glue(studyId, [{ blockId }], { ...wrong, gluedOn: days[at] }).glueUpId)
    for (const dueOn of ['2030-07-01', '2030-07-02', '2030-07-03']) decide({ dueOn })
    const known = () => pulls(studyId).map(({ gluedOn, key, sequence }) => ({ gluedOn, key, sequence }))
    const before = known()
    correct(ids[2]!, { ...wrong, gluedOn: '2030-03-01' })
    correct(ids[0]!, { ...wrong, gluedOn: '2030-02-01' })
    const after = known()
    expect(after.map(({ gluedOn, key }) => [gluedOn, key])).toEqual([
      ['2030-02-01', '1-0-3'],
      ['2030-03-01', `1-${10_000 + ids[1]!}-3`],
      ['2030-06-01', '1-2-3'],
    ])
    for (const { key, sequence } of before)
      expect(after.find((one) => one.key === key)?.sequence ?? Number.POSITIVE_INFINITY).toBeGreaterThan(sequence)
  })

  it('touches its study, whose pulls are others now', () => {
    const studyId = storeStudy(database)
    const { glueUpId } = glue(
      studyId,
      storeBlocks(database, studyId, [{}]).map((blockId) => ({ blockId })),
    )
    takeTouched(database)
    correct(glueUpId, right)
    expect(takeTouched(database)).toEqual(
      expect.arrayContaining([`glue-up ${glueUpId}`, `study ${studyId}`, 'specimen 1']),
    )
  })

  it('takes the lot of a specimen along whose adhesive was written in another way since', () => {
    const { glueUpId, specimens } = glue(null, [{ adhesive: 'casein C1' }])
    const [{ specimenId, fields }] = specimens as [(typeof specimens)[number]]
    correctSpecimen(database, specimenId, { ...fields, adhesive: 'casein C-1' }, morning, 'bench', 'as on the tin')
    correct(glueUpId, { ...right, lots: [{ adhesive: 'casein C1', lot: 'C1-lot-3' }] })
    expect(specimenRevisions(database, specimenId).at(-1)!.fields.lot).toBe('C1-lot-3')
  })

  it('refuses a day after that on which a block was broken where the person is, also in a break that was set aside', () => {
    standIn('Pacific/Honolulu')
    const { glueUpId, specimens } = glue(null, [{ adhesive: 'casein C1' }])
    const breakId = storeBreak(database, specimens[0]!.specimenId)
    addDecision(database, {
      ...{ breakId, kind: 'set-aside', specimenId: null },
      ...{ by: 'bench', reason: 'fixture touched', recordedAt: morning },
    })
    // 9:30 UTC is 23:30 of the day before
    expect(() => correct(glueUpId, { ...wrong, gluedOn: '2031-05-02' })).toThrow(/was broken before that day/)
    correct(glueUpId, { ...wrong, gluedOn: '2031-05-01' })
  })

  it('refuses what changes nothing', () => {
    const { glueUpId } = glue(null, [{ adhesive: 'casein C1' }])
    expect(() => correct(glueUpId, wrong)).toThrow(/Nothing/)
    expect(glueUp(database, glueUpId)).toMatchObject({ entered: null, corrections: [] })
  })
})
