import { afterEach, beforeEach, expect, it } from 'vitest'
import { specimenFields } from '#contract/specimens/specimen.ts'
import { dialReading } from '#contract/specimens/typedResult.ts'
import { isTouched } from '#contract/topics.ts'
import { madeStudy } from '#tests/domain/programme/study/madeStudy.ts'
import { benchEngine } from '#tests/fakes/benchEngine.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

const instant = '2031-05-02T09:30:00.000Z'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

it('plans a study, extends it and allocates its blocks, with progress, and tells whoever shows it', async () => {
  const { engine, handlers, heardOf } = await benchEngine(home.archive)
  const { studyId } = await handlers['studies.add']({ fields: madeStudy(), by: 'Mara' })
  expect(isTouched([`study ${studyId}`, 'studies'], heardOf('records.changed').at(-1)!.topics)).toBe(true)
  const fields = madeStudy({ agesMonths: [0, 3, 12, 24] })
  await handlers['studies.correct']({ studyId, fields, by: 'Mara', reason: 'two years' })
  expect(await handlers['studies.allocate']({ studyId, by: 'Mara' })).toMatchObject({ blocks: 288 })
  expect(heardOf('task.progress').at(-1)).toMatchObject({ task: 'allocation', total: 288 })
  expect(isTouched([`study ${studyId}`], heardOf('records.changed').at(-1)!.topics)).toBe(true)
  const record = await handlers['studies.get']({ studyId })
  expect(record.counts).toEqual({ allocated: 288, glued: 0, waiting: 0, broken: 0, lost: 0 })
  expect(record.revisions).toHaveLength(2)
  expect((await handlers['studies.list']({})).rows).toMatchObject([{ studyId, counts: record.counts }])
  await engine.close()
})

it('knows no spread where no group has two results', async () => {
  const { engine, handlers } = await benchEngine(home.archive)
  expect(await handlers['studies.variation']({})).toBeNull()
  await engine.close()
})

it('pools the spread of the groups that the archive has, blocks that were set aside left out', async () => {
  const fields = ['K-1', 'K-2', 'K-3'].map((number) =>
    specimenFields.parse({ number, adhesive: 'casein C1', jointType: 'lap', exposure: 'loft', areaMm2: 100 }),
  )
  const blocks = await home.archive.addSpecimens(fields, instant, 'Mara')
  const peaksN = [900, 1100, 5000]
  const readings = await home.archive.addDialReadings(
    blocks.map(({ specimenId }, at) => dialReading.parse({ specimenId, peakN: peaksN[at] })),
    ...([instant, 'Mara'] as const),
  )
  const aside = { typedResultId: readings[2]!.typedResultId, kind: 'set-aside', reason: 'slipped' } as const
  await home.archive.decideTypedResult({ ...aside, cause: null, recordedAt: instant, by: 'Mara' })
  // Two blocks of 9 and 11 MPa: SD √2, mean 10
  const observations = () => Promise.reject(new TypeError('the thread that stores is not asked'))
  const { engine, handlers } = await benchEngine({ ...home.archive, observations })
  expect(await handlers['studies.variation']({})).toEqual({
    cvPercent: expect.closeTo(10 * Math.SQRT2, 10),
    groups: 1,
    blocks: 2,
  })
  await engine.close()
})
