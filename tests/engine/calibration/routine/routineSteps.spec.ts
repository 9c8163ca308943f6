import { expect, test } from 'vitest'
import { plannedForces } from '#domain/calibration/routinePlan.ts'
import { createRoutineSteps } from '#engine/calibration/routine/routineSteps.ts'
import { shopPlan } from '#tests/fakes/routineRun.ts'

const plan = shopPlan({ runs: 2 })
const takenAt = '2031-05-06T08:00:00.000Z'
const averaged = (mean: number) => ({ mean, sd: 1, count: 160, lowest: mean - 2, highest: mean + 2 })

/** A routine of which the first so many positions were read, at 100 counts for each. */
function readSteps(read: number) {
  const steps = createRoutineSteps(plan, plannedForces(plan, null))
  for (let index = 0; index < read; index++) {
    steps.take(index, averaged(100 * index), takenAt)
    steps.toNextAhead()
  }
  return steps
}

test('goes from one position to the next that has not been read', () => {
  const steps = readSteps(0)
  expect(steps.current()).toBe(0)
  expect(readSteps(3).current()).toBe(3)
  expect(readSteps(steps.positions().length).current()).toBeNull()
})

test('counts the newer of two readings of one position, and keeps the older', () => {
  const steps = readSteps(3)
  steps.repeat(1)
  expect(steps.current()).toBe(1)
  expect(steps.newest()).toBe(2)
  expect(steps.take(1, averaged(105), takenAt).number).toBe(3)
  expect(steps.newest()).toBe(1)
  expect(steps.rows().map(({ reading }) => reading)).toEqual([0, 105, 200])
  expect(steps.readings()[1]).toMatchObject({ mean: 100, standing: 'replaced', replacedBy: 3 })
})

test('leaves out a position that is skipped, but not what was read there before', () => {
  const steps = readSteps(2)
  steps.skip()
  expect(steps.positions()[2]!.standing).toBe('skipped')
  steps.repeat(1)
  steps.skip()
  expect(steps.positions()[1]!.standing).toBe('taken')
  expect(steps.rows()).toHaveLength(2)
})

test('reads a run again from its beginning when it is broken off, and counts nothing of it', () => {
  const first = readSteps(0)
    .positions()
    .filter(({ run }) => run === 1).length
  const steps = readSteps(first + 2)
  steps.breakOff(2)
  expect(steps.current()).toBe(first)
  expect(steps.rows()).toHaveLength(first)
  expect(
    steps
      .readings()
      .map(({ standing }) => standing)
      .slice(first),
  ).toEqual(['broken-off', 'broken-off'])
})

test('knows no position beyond the last', () => {
  const steps = readSteps(0)
  expect(() => steps.repeat(steps.positions().length)).toThrow(expect.objectContaining({ code: 'not-found' }))
})
