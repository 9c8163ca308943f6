import { afterEach, beforeEach, expect, it } from 'vitest'
import { procedures } from '#contract/procedures.ts'
import { isTouched } from '#contract/topics.ts'
import { benchEngine } from '#tests/fakes/benchEngine.ts'
import { temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

it('makes specimens that wait for the press at once, and tells whoever shows them', async () => {
  const { engine, handlers, heardOf } = await benchEngine(home.archive)
  const input = procedures['glueUps.add'].input.parse({
    ...{ studyId: null, by: 'test', fields: { gluedOn: '2031-03-01', lots: [{ adhesive: 'hide', lot: 'h-1' }] } },
    blocks: [{ number: 'K-1', adhesive: 'hide', overlapLengthMm: 30, overlapWidthMm: 20, areaMm2: 600 }],
  })
  const { glueUpId, blocks } = await handlers['glueUps.add'](input)
  expect(blocks).toBe(1)
  expect(engine.bench.state().specimen?.fields).toMatchObject({ number: 'K-1', lot: 'h-1', gluedOn: '2031-03-01' })
  expect(await handlers['glueUps.list']({})).toMatchObject([{ glueUpId, studyTitle: null, by: 'test' }])
  expect((await handlers['glueUps.get']({ glueUpId })).specimens).toMatchObject([{ number: 'K-1', areaMm2: 600 }])
  const { topics } = heardOf('records.changed').at(-1)!
  expect(isTouched(['glue-ups'], topics) && isTouched(['specimens'], topics)).toBe(true)
  await engine.close()
})

it('corrects a glue-up, which says so to whoever shows it', async () => {
  const { engine, handlers, heardOf } = await benchEngine(home.archive)
  const input = procedures['glueUps.add'].input.parse({
    ...{ studyId: null, by: 'test', fields: { gluedOn: '2030-03-01' }, blocks: [{ number: 'K-1', adhesive: 'hide' }] },
  })
  const { glueUpId, fields } = await handlers['glueUps.add'](input)
  const corrected = { glueUpId, fields: { ...fields, gluedOn: '2031-03-01' }, by: 'test', reason: 'wrong year' }
  expect((await handlers['glueUps.correct'](corrected)).fields.gluedOn).toBe('2031-03-01')
  expect((await handlers['glueUps.get']({ glueUpId })).entered).toEqual(fields)
  const { topics } = heardOf('records.changed').at(-1)!
  expect(isTouched([`glue-up ${glueUpId}`], topics) && isTouched(['specimens'], topics)).toBe(true)
  await engine.close()
})

it('asks for the blocks of a study that is there', async () => {
  const { engine, handlers } = await benchEngine(home.archive)
  await expect(handlers['glueUps.plan']({ studyId: 9 })).rejects.toMatchObject({ code: 'not-found' })
  expect(await handlers['glueUps.studies']({})).toEqual([])
  await engine.close()
})
