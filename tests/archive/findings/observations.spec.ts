import { expect, it } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { observations } from '#archive/findings/observations.ts'
import { methods } from '#archive/methods.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { addDialReadings, decideTypedResult } from '#archive/specimens/typedResults.ts'
import { pulledStudy } from '../pulledStudy.ts'
import { importBlocks, readBlock } from '../storedImport.ts'
import { archiveInMemory, morning, rampAndFall, specimenFields, storeBreak } from '../storedStudy.ts'

const noPull = () => null
const curve = rampAndFall(100, 360_000)

it('holds the breaks of specimens with load, area and what was set aside, and nothing else', () => {
  const database = archiveInMemory()
  const fields = [{}, {}, { areaMm2: null, overlapLengthMm: null }, {}].map((change, i) =>
    specimenFields(`C1-${i + 1}`, change),
  )
  addSpecimens(database, fields, morning, 'bench')
  for (const specimenId of [1, 2, 3]) storeBreak(database, specimenId, curve)
  storeBreak(database, 4, curve, { outcome: 'unloading' })
  storeBreak(database, null, curve)
  addDecision(database, {
    breakId: 2,
    recordedAt: morning,
    by: 'bench',
    reason: 'the block slipped',
    kind: 'set-aside',
    specimenId: null,
    cause: 'other',
  })
  expect(observations(database, noPull)).toEqual([
    {
      specimenId: 1,
      studyId: null,
      breakId: 1,
      startedAt: expect.any(String),
      number: 'C1-1',
      adhesive: 'casein C1',
      jointType: 'long grain to long grain',
      bondLineGapMm: 0,
      exposure: 'loft',
      gluedOn: '2031-03-01',
      areaMm2: 600,
      peakN: 3600,
      woodFailurePercent: null,
      setAside: null,
      simulated: true,
      strengthMPa: null,
      ageMonths: null,
      pullAgeMonths: null,
      board: '',
    },
    expect.objectContaining({ number: 'C1-2', setAside: 'the block slipped' }),
  ])
})

it('tells what the virtual press or the demo study made up from what a person measured', () => {
  const simulatedOf = (source: string, demo: boolean) => {
    const database = archiveInMemory()
    addSpecimens(database, [specimenFields('C1-1', { demo })], morning, 'bench')
    storeBreak(database, 1, curve)
    database.exec('DROP TRIGGER capture_session_is_never_changed')
    database.prepare('UPDATE capture_session SET source = ?').run(source)
    return observations(database, noPull).map(({ simulated }) => simulated)
  }
  expect(simulatedOf('/dev/ttyUSB0 at 115200 baud', false)).toEqual([false])
  expect(simulatedOf('virtual amplifier: brittle', false)).toEqual([true])
  expect(simulatedOf('/dev/ttyUSB0 at 115200 baud', true)).toEqual([true])
})

it('holds results without a curve where no break counts: with their age, their strength alone, and why they are set aside', () => {
  const database = archiveInMemory()
  const glued = { gluedOn: '2020-03-01', areaMm2: 600, board: 'b7' }
  importBlocks(database, [
    readBlock(2, { ...glued, number: 'A', peakN: 3000, brokenOn: '2021-03-01', woodFailurePercent: 30 }),
    readBlock(3, { ...glued, number: 'B', peakN: 4200, ageMonths: 24 }),
    readBlock(4, { number: 'C', areaMm2: null, peakN: null, strengthMPa: 8 }),
    readBlock(5, { number: 'D', areaMm2: null, peakN: 5000 }),
    readBlock(6, { ...glued, number: 'E', peakN: 600 }),
    readBlock(7, { ...glued, number: 'F', peakN: 600 }),
  ])
  decideTypedResult(database, {
    typedResultId: 5,
    recordedAt: morning,
    by: 'Ada',
    reason: 'misread',
    kind: 'set-aside',
  })
  storeBreak(database, 6, curve)
  const seen = observations(database, noPull)
  expect(seen.map(({ number }) => number)).toEqual(['F', 'A', 'B', 'C', 'E'])
  expect(seen[0]).toMatchObject({ peakN: 3600 })
  expect(seen[1]).toMatchObject({ startedAt: '2021-03-01', gluedOn: '2020-03-01', board: 'b7', woodFailurePercent: 30 })
  // The day of the import is not the day of the test
  expect(seen[2]).toMatchObject({ gluedOn: null, ageMonths: 24 })
  expect(seen[3]).toMatchObject({ strengthMPa: 8, areaMm2: null, peakN: null })
  expect(seen[4]).toMatchObject({ setAside: 'misread' })
})

it('tells of each block of a study in which pull it was broken, and of no other block', () => {
  const database = archiveInMemory()
  const { specimenIds } = pulledStudy(database)
  const [ofSixMonths, late, spare] = [specimenIds[4]!, specimenIds[5]!, specimenIds.at(-1)!]
  const read = (specimenId: number, brokenOn: string) =>
    addDialReadings(
      database,
      [
        {
          ...{ specimenId, peakN: 3000, woodFailurePercent: null, failurePattern: null, brokenOn },
          ...{ resolutionN: 10, readBy: 'Ada', note: '' },
        },
      ],
      morning,
      'Ada',
    )
  read(ofSixMonths, '2031-02-14')
  read(spare, '2031-03-14')
  read(late, '2031-03-15')
  importBlocks(database, [readBlock(2, { number: 'A', gluedOn: '2030-08-31', brokenOn: '2031-02-28' })])
  const seen = methods.observations(database).map((one) => [one.specimenId, one.startedAt, one.pullAgeMonths])
  expect(seen).toEqual([
    ...specimenIds.slice(0, 3).map((specimenId) => [specimenId, morning, null]),
    [ofSixMonths, '2031-02-14', 6],
    [spare, '2031-03-14', 6],
    [late, '2031-03-15', null],
    [specimenIds.length + 1, '2031-02-28', null],
  ])
  expect(methods.observations(database).map(({ studyId }) => studyId)).toEqual([1, 1, 1, 1, 1, 1, null])
})
