import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { addPullDecision } from '#archive/programme/pullDecisions.ts'
import { pullSources } from '#archive/programme/pulls.ts'
import { verify } from '#archive/verify/verify.ts'
import { studyPulls } from '#domain/programme/calendar/studyPulls.ts'
import { pulledStudy } from '../pulledStudy.ts'
import { storeStudy } from '../storedProgramme.ts'
import { archiveInMemory } from '../storedStudy.ts'

let database: Database.Database
let studyId = 0
beforeEach(() => {
  database = archiveInMemory()
  studyId = pulledStudy(database).studyId
})

type Made = Partial<Parameters<typeof addPullDecision>[1]>
const recordedAt = '2031-02-01T08:00:00.000Z'
const decide = (made: Made) =>
  addPullDecision(database, {
    ...{ recordedAt, by: 'bench', reason: 'the store is closed', studyId, gluedOn: '2030-08-31', ageMonths: 6 },
    ...{ kind: 'moved', dueOn: null, blocksPerSeries: null },
    ...made,
  })
const pull = (ageMonths = 6) =>
  studyPulls(pullSources(database, studyId).rows[0]!, '2031-02-01').find((one) => one.ageMonths === ageMonths)

it('moving a pull changes its day and raises its sequence, and nothing else of it', () => {
  const before = pull()
  decide({ kind: 'moved', dueOn: '2031-03-10' })
  expect(pull()).toMatchObject({
    ...{ key: before!.key, plannedOn: '2031-02-28', dueOn: '2031-03-10', sequence: before!.sequence + 1 },
    decision: { reason: 'the store is closed' },
  })
  expect(pull(12)!.sequence).toBe(before!.sequence)
})

it('a skipped pull can be restored, and every word on it stays', () => {
  decide({ kind: 'skipped' })
  expect(pull()!.state).toBe('skipped')
  decide({ kind: 'restored' })
  expect(pull()).toMatchObject({ state: 'soon', dueOn: '2031-02-28' })
  expect(pullSources(database, studyId).rows[0]!.decisions).toHaveLength(2)
  expect(verify(database, () => {}).faults).toEqual([])
})

it('an added pull takes spares', () => {
  decide({ kind: 'added', ageMonths: 9, blocksPerSeries: 2 })
  expect(pull(9)).toMatchObject({ added: true, dueOn: '2031-05-31', blocks: { planned: 2, waiting: 2 } })
})

describe('what cannot be decided', () => {
  it.each<[string, Made, RegExp]>([
    ['a pull of an age that there is not', { ageMonths: 7, kind: 'skipped' }, /no pull of this age/],
    ['a day that is missing', { kind: 'moved' }, /needs a day/],
    ['a day before the glue-up', { kind: 'moved', dueOn: '2030-08-30' }, /before the glue-up/],
    ['a pull that is there already', { kind: 'added', ageMonths: 6, blocksPerSeries: 1 }, /this age already/],
    ['an added pull of no blocks', { kind: 'added', ageMonths: 9 }, /takes spares/],
    [
      'spares for a pull that is only moved',
      { kind: 'moved', dueOn: '2031-03-10', blocksPerSeries: 1 },
      /Only an added/,
    ],
    ['a day for a skipped pull', { kind: 'skipped', dueOn: '2031-03-10' }, /takes no day/],
    ['what was never changed', { kind: 'restored' }, /as it was planned/],
  ])('%s', (_what, made, message) => {
    expect(() => decide(made)).toThrow(message)
    expect(pullSources(database, studyId).rows[0]!.decisions).toEqual([])
  })

  it('to skip a pull twice', () => {
    decide({ kind: 'skipped' })
    expect(() => decide({ kind: 'skipped' })).toThrow(/skipped already/)
  })

  it('a study without any day to count from, or none at all', () => {
    const undated = storeStudy(database)
    expect(() => decide({ studyId: undated, gluedOn: null, kind: 'skipped' })).toThrow(/no pull with a date/)
    expect(() => decide({ studyId: 77, kind: 'skipped' })).toThrow(expect.objectContaining({ code: 'not-found' }))
  })
})
