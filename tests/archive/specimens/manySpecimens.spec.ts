import { expect, test } from 'vitest'
import { specimenIds } from '#archive/lists/lists.ts'
import { moveSpecimens, withdrawSpecimens } from '#archive/specimens/manySpecimens.ts'
import { listSpecimens, specimen, waitingSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { listQuery } from '#contract/listQuery.ts'
import type { Progress } from '#contract/tasks.ts'
import { archiveInMemory, morning, specimenFields } from '../storedStudy.ts'

const unwatched = [() => {}, () => false] as const
const signed = { by: 'bench', reason: 'the shelf fell down' }

function study() {
  const database = archiveInMemory()
  const numbers = ['A-1', 'A-2', 'A-3']
  addSpecimens(
    database,
    numbers.map((number) => specimenFields(number)),
    morning,
    'bench',
  )
  return database
}

const listed = (database: ReturnType<typeof study>, change: object) =>
  listSpecimens(database, listQuery.parse(change)).rows.map(({ fields }) => fields.number)

test('what was withdrawn waits no more, is listed as withdrawn and found by the reason, until it is taken back', () => {
  const database = study()
  expect(withdrawSpecimens(database, ...unwatched, [1, 3], 'withdrawn', morning, signed)).toBe(2)
  expect(waitingSpecimens(database, null, 10).rows.map(({ specimenId }) => specimenId)).toEqual([2])
  expect(listed(database, { status: 'waiting' })).toEqual(['A-2'])
  expect(listed(database, { status: 'withdrawn' })).toEqual(['A-1', 'A-3'])
  expect(listed(database, { text: 'withdrawn fell' })).toEqual(['A-1', 'A-3'])
  expect(specimen(database, 1).current.withdrawn).toBe('the shelf fell down')
  expect(
    withdrawSpecimens(database, ...unwatched, [1, 2], 'taken-back', morning, { by: 'bench', reason: 'found' }),
  ).toBe(1)
  expect(listed(database, { status: 'withdrawn' })).toEqual(['A-3'])
  expect(specimen(database, 1).current.withdrawn).toBeNull()
  expect(verify(database, () => {}).faults).toEqual([])
})

test('all are moved or none, each with a revision and its reason', () => {
  const database = study()
  expect(() => moveSpecimens(database, ...unwatched, [1, 99], 'shelf 9', morning, signed)).toThrow(/99/)
  expect(specimen(database, 1).revisions).toHaveLength(1)
  expect(moveSpecimens(database, ...unwatched, [1, 2], 'shelf 9', morning, signed)).toBe(2)
  expect(moveSpecimens(database, ...unwatched, [1, 2, 3], 'shelf 9', morning, signed)).toBe(1)
  expect(specimen(database, 3).revisions.map(({ fields, reason }) => [fields.place, reason])).toEqual([
    ['shelf 2', ''],
    ['shelf 9', 'the shelf fell down'],
  ])
  expect(() => withdrawSpecimens(database, ...unwatched, [1, 99], 'withdrawn', morning, signed)).toThrow(/99/)
  expect(listed(database, { status: 'withdrawn' })).toEqual([])
})

test('gives the numbers of all that fit, in the order of the list', () => {
  const database = study()
  const { offset: _offset, limit: _limit, ...query } = listQuery.parse({ descending: true, limit: 1 })
  expect(specimenIds(database, query)).toEqual([3, 2, 1])
  expect(specimenIds(database, { ...query, text: 'a-2' })).toEqual([2])
})

test('tells how far it is, and leaves all as it was when it is stopped', () => {
  const database = archiveInMemory()
  const numbers = Array.from({ length: 1200 }, (_, at) => specimenFields(`A-${at + 1}`))
  const ids = addSpecimens(database, numbers, morning, 'bench').map(({ specimenId }) => specimenId)
  for (const act of [
    (...watch: [(progress: Progress) => void, () => boolean]) =>
      moveSpecimens(database, ...watch, ids, 'shelf 9', morning, signed),
    (...watch: [(progress: Progress) => void, () => boolean]) =>
      withdrawSpecimens(database, ...watch, ids, 'withdrawn', morning, signed),
  ]) {
    const told: Progress[] = []
    const revisions = specimen(database, 1).revisions.length
    expect(() =>
      act(
        (progress) => told.push(progress),
        () => told.length === 3,
      ),
    ).toThrow('every specimen is as it was')
    expect(told.map(({ done, total }) => [done, total])).toEqual([0, 500, 1000].map((done) => [done, 1200]))
    expect(listed(database, { text: 'withdrawn' })).toEqual([])
    expect(specimen(database, 1).revisions).toHaveLength(revisions)
    expect(act(...unwatched)).toBe(1200)
  }
  expect(verify(database, () => {}).faults).toEqual([])
})
