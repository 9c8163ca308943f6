import { afterEach, beforeEach, expect, it } from 'vitest'
import { openArchive } from '#archive/openArchive.ts'
import { benchEngine, virtualChoice } from '#tests/fakes/benchEngine.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
beforeEach(async () => {
  home = await temporaryArchive()
})
afterEach(() => home.remove())

/** Three of five blocks in a session, in the order that it drew. */
async function begun(breaks: number) {
  const blocks = await addBlocks(home.archive, ['A-1', 'A-2', 'A-3', 'A-4', 'A-5'])
  const bench = await benchEngine(home.archive, { breaks })
  const { specimenIds, breakingSessionId } = await bench.handlers['breaking.begin']({
    ...{ title: 'three of five', pulls: [], specimenIds: blocks.slice(2), by: 'test' },
  })
  return { ...bench, blocks, order: specimenIds, breakingSessionId }
}

it('breaks the specimens of a session in its order, hands-free, and nothing after the last of them', async () => {
  const { engine, until, handlers, order, breakingSessionId } = await begun(4)
  expect(engine.bench.state()).toMatchObject({
    breaking: { breakingSessionId, title: 'three of five', specimens: 3, broken: 0, skipped: 0 },
    specimen: { specimenId: order[0] },
    next: { specimenId: order[1] },
    waitingSpecimens: 3,
  })
  await handlers['bench.connect']({ source: virtualChoice })
  await until(({ lastBreak }) => lastBreak?.specimenId === order[2])
  expect((await until(({ breaking }) => breaking?.broken === 3)).next).toBeNull()
  const beyond = await until(({ lastBreak }) => lastBreak !== null && lastBreak.specimenId === null)
  expect(beyond.waitingSpecimens).toBe(0)
  const record = await handlers['breaking.get']({ breakingSessionId })
  expect(record.members.map(({ specimen, breaks }) => [specimen.specimenId, breaks.length])).toEqual(
    order.map((specimenId) => [specimenId, 1]),
  )
  await engine.close()
})

it('goes on where it was after the program was ended', async () => {
  const { engine, handlers, order } = await begun(1)
  await handlers['breaking.skip']({ specimenId: order[0]!, note: 'wet', by: 'test' })
  await engine.close()
  await home.archive.close()
  const archive = await openArchive({ path: home.path, program: 'test' })
  const { engine: again } = await benchEngine(archive)
  expect(again.bench.state()).toMatchObject({
    breaking: { broken: 0, skipped: 1, specimens: 3 },
    specimen: { specimenId: order[1] },
  })
  await again.close()
  await archive.close()
})

it('passes over the specimen at hand, keeps it out of the queue, and breaks it after all where it is taken', async () => {
  const { engine, until, handlers, order } = await begun(1)
  const state = await handlers['breaking.skip']({ specimenId: order[0]!, note: 'wet', by: 'test' })
  expect(state).toMatchObject({ specimen: { specimenId: order[1] }, breaking: { skipped: 1 }, waitingSpecimens: 2 })
  expect((await handlers['bench.nextSpecimen']({})).specimen?.specimenId).toBe(order[2])
  expect((await handlers['bench.nextSpecimen']({})).specimen?.specimenId).toBe(order[1])
  await handlers['bench.takeSpecimen']({ specimenId: order[0]!, again: false })
  await handlers['bench.connect']({ source: virtualChoice })
  const broke = await until(({ breaking }) => breaking?.broken === 1)
  expect(broke.breaking).toMatchObject({ broken: 1, skipped: 0 })
  await engine.close()
})

it('gives the bench back to all that wait when it is ended, and takes it again when it is opened again', async () => {
  const { engine, handlers, blocks, order, breakingSessionId } = await begun(1)
  await handlers['breaking.end']({ breakingSessionId, note: '', by: 'test' })
  expect(engine.bench.state()).toMatchObject({ breaking: null, waitingSpecimens: 5 })
  await expect(handlers['breaking.skip']({ specimenId: order[0]!, note: '', by: 'test' })).rejects.toMatchObject({
    code: 'conflict',
  })
  await handlers['bench.takeSpecimen']({ specimenId: blocks[0]!, again: false })
  await handlers['breaking.reopen']({ breakingSessionId, note: '', by: 'test' })
  expect(engine.bench.state()).toMatchObject({ breaking: { breakingSessionId }, specimen: { specimenId: order[0] } })
  await engine.close()
})
