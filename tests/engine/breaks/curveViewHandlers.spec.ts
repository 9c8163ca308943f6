import { afterEach, beforeEach, expect, test } from 'vitest'
import type { Archive } from '#archive/archive.ts'
import type { Events } from '#contract/events.ts'
import type { Handlers } from '#contract/procedures.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import { curveViewHandlers } from '#engine/breaks/curveViewHandlers.ts'
import { createLongTasks, type LongTasks } from '#engine/core/longTask.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { keepCurve, type MadeCurve } from '../storedCurves.ts'

const plain: MadeCurve = { restMs: 500, climbMs: 2000, afterMs: 300, peakCounts: 400_000 }
let archive: Archive
let remove = async () => {}
let tasks: LongTasks
let said: [keyof Events, unknown][]
beforeEach(async () => {
  ;({ archive, remove } = await temporaryArchive())
  tasks = createLongTasks()
  said = []
})
afterEach(() => remove())

/** As a shell asks: inputs and answers are held against the contract. */
async function ask<Answer>(name: keyof ReturnType<typeof curveViewHandlers>, input: unknown): Promise<Answer> {
  const handlers = curveViewHandlers({ archive, tasks, emit: (event, payload) => said.push([event, payload]) })
  const reply = await createDispatcher(handlers as unknown as Handlers)(name, input)
  return (reply.ok ? reply.value : reply.error) as Answer
}

async function keepStudy() {
  const [one, two, three] = await addBlocks(archive, ['C1-LL-10', 'C1-LL-2', 'C1-LL-3'])
  const ids = [one, two, three].map((specimenId) => keepCurve(archive, plain, { specimenId: specimenId! }))
  const loose = await keepCurve(archive, plain)
  return { ids: await Promise.all(ids), loose }
}

test('says what a group has in common and gives its breaks; a break without a specimen is alone', async () => {
  const { ids, loose } = await keepStudy()
  expect(await ask('breaks.group', { breakId: ids[0] })).toEqual({
    common: { adhesive: 'casein C1', jointType: '', bondLineGapMm: null, exposure: '', ageMonths: null },
    breakIds: [ids[1], ids[2], ids[0]],
  })
  expect(await ask('breaks.group', { breakId: loose })).toEqual({
    common: null,
    breakIds: [loose],
  })
  expect(await ask('breaks.group', { breakId: 99 })).toMatchObject({ code: 'not-found' })
})

test('shows a stored curve through a filter and by its slope', async () => {
  const breakId = await keepCurve(archive, plain)
  const filter = { kind: 'moving-average', windowS: 0.02 }
  const shown: { force: Float64Array; unit: string } = await ask('breaks.filtered', {
    breakId,
    filter,
    maxPoints: 200,
  })
  expect(shown.unit).toBe('N')
  expect(shown.force.length).toBeLessThanOrEqual(200)
  const slope: { timeS: Float64Array; force: Float64Array } = await ask('breaks.slope', {
    breakId,
    windowS: 0.1,
    fromS: 1,
    toS: 2,
  })
  // By hand: 4000 N in 2 s.
  for (const value of slope.force) expect(value).toBeCloseTo(2000, 6)
  expect(await ask('breaks.filtered', { breakId, filter: { kind: 'butterworth', cutoffHz: 600 } })).toMatchObject({
    code: 'invalid-input',
    hint: expect.stringContaining('at most 400 Hz'),
  })
  expect(await ask('breaks.filtered', { breakId: 99, filter })).toMatchObject({ code: 'not-found' })
})

test('compares as the task "comparison", tells how far it is, and can be stopped', async () => {
  const { ids } = await keepStudy()
  const request = { breakIds: ids, alignAt: 'peak', normalising: 'no' }
  const made: { curves: unknown[] } = await ask('comparison.make', request)
  expect(made.curves).toHaveLength(3)
  expect(said.at(-1)).toEqual(['task.progress', { task: 'comparison', done: 3, total: 3 }])
  const running = ask('comparison.make', request)
  expect(await ask('comparison.make', request)).toMatchObject({ code: 'conflict' })
  expect(tasks.cancel('comparison')).toBe(true)
  expect(await running).toMatchObject({ code: 'cancelled' })
  expect(await ask('comparison.make', request)).toMatchObject({ unit: 'N' })
})
