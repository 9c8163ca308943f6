import { expect, it } from 'vitest'
import { keepLabel, nextOwnNumbers } from '#archive/programme/ownNumbers.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { archiveInMemory, morning, specimenFields } from '../storedStudy.ts'

const given = (database: ReturnType<typeof archiveInMemory>, count: number) =>
  nextOwnNumbers(database, count, []).map(({ number }) => number)

it('goes on after the highest number that was given, and passes over those whose check would be X', () => {
  const database = archiveInMemory()
  // ISO/IEC 7064 MOD 11-2 by hand: 1 gives X, 2 gives 8, 3 gives 6
  expect(given(database, 2)).toEqual(['28', '36'])
  keepLabel(database, { running: 2, specimenId: 7, recordedAt: morning, by: 'bench' })
  expect(given(database, 1)).toEqual(['36'])
})

it('passes over a number that somebody wrote on a block, or is about to', () => {
  const database = archiveInMemory()
  addSpecimens(database, [specimenFields('28')], morning, 'bench')
  expect(given(database, 1)).toEqual(['36'])
  expect(given(database, 0)).toEqual([])
  expect(nextOwnNumbers(database, 1, ['36']).map(({ number }) => number)).toEqual(['44'])
})
