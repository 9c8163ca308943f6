import { expect, test } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { methods } from '#archive/methods.ts'
import { addSpecimens, correctSpecimen } from '#archive/specimens/specimens.ts'
import type { SpecimenFields } from '#contract/specimens/specimen.ts'
import { glueBlocks, storeBlocks, storeStudy } from '../storedProgramme.ts'
import { archiveInMemory, morning, rampAndFall, specimenFields, storeBreak } from '../storedStudy.ts'

const ramp = rampAndFall(100, 360_000)
const { breakGroup } = methods

/** One break for each specimen; break and specimen have the same number. */
function study(changes: Partial<SpecimenFields>[]) {
  const database = archiveInMemory()
  const fields = changes.map((change, i) => specimenFields(`C1-LL-${changes.length - i}`, change))
  addSpecimens(database, fields, morning, 'bench')
  for (let specimenId = 1; specimenId <= changes.length; specimenId++) storeBreak(database, specimenId, ramp)
  return database
}

test('holds the breaks that agree in adhesive, joint, gap, exposure and age, in natural order of number', () => {
  const database = study([
    {},
    { adhesive: 'resorcinol R2' },
    { jointType: 'scarf' },
    { exposure: 'bilge' },
    { bondLineGapMm: 0.5 },
    { bondLineGapMm: null },
    { gluedOn: '2030-03-01' },
    { gluedOn: null },
    { adhesive: 'Casein c1', gluedOn: '2031-03-06', lot: 'C1-2031-b', place: 'shelf 9' },
    ...Array.from({ length: 3 }, () => ({})),
  ])
  const group = breakGroup(database, 1)
  // Numbers were given backwards: break 12 is of C1-LL-1 and break 1 of C1-LL-12.
  expect(group.breakIds).toEqual([12, 11, 10, 9, 1])
  // Glued on 1 March, broken on 2 May: 62 days, two months.
  expect(group.common).toEqual({
    adhesive: 'casein C1',
    jointType: 'long grain to long grain',
    bondLineGapMm: 0,
    exposure: 'loft',
    ageMonths: 2,
  })
  for (const alone of [2, 3, 4, 5, 6, 7, 8]) expect(breakGroup(database, alone).breakIds).toEqual([alone])
  expect(breakGroup(database, 6).common).toMatchObject({ bondLineGapMm: null })
  expect(breakGroup(database, 8).common).toMatchObject({ ageMonths: null })
})

test('follows a specimen that was corrected and a break that was moved to another', () => {
  const database = study([{}, { adhesive: 'resorcinol R2' }, {}])
  correctSpecimen(database, 2, specimenFields('C1-LL-2'), morning, 'bench', 'the wrong bottle was written down')
  expect(breakGroup(database, 1).breakIds).toEqual([3, 2, 1])
  correctSpecimen(
    database,
    2,
    specimenFields('C1-LL-2', { exposure: 'bilge' }),
    morning,
    'bench',
    'it lay in the bilge',
  )
  addDecision(database, {
    breakId: 3,
    kind: 'reassigned',
    specimenId: 2,
    by: 'bench',
    reason: 'wrong specimen',
    recordedAt: morning,
  })
  expect(breakGroup(database, 1).breakIds).toEqual([1])
  expect(breakGroup(database, 3).breakIds).toEqual([2, 3])
})

test('leaves an unloading out unless it was asked for or overruled, and keeps a break that was set aside', () => {
  const database = study([{}, {}])
  const unloading = storeBreak(database, 1, ramp, { outcome: 'unloading' })
  addDecision(database, {
    breakId: 2,
    kind: 'set-aside',
    specimenId: null,
    by: 'bench',
    reason: 'fixture touched',
    recordedAt: morning,
  })
  expect(breakGroup(database, 1).breakIds).toEqual([2, 1])
  expect(breakGroup(database, unloading).breakIds).toEqual([2, 1, unloading])
  const { timeUs, readings } = ramp
  addDecision(database, {
    breakId: unloading,
    kind: 'peak-picked',
    specimenId: null,
    sample: { timeS: timeUs[50]! / 1e6, reading: readings[50]! },
    by: 'bench',
    reason: 'it crept away',
    recordedAt: morning,
  })
  expect(breakGroup(database, 1).breakIds).toEqual([2, 1, unloading])
})

test('holds the blocks of one pull together, whichever day each was glued and broken, and no block from beside it', () => {
  const database = archiveInMemory()
  const studyId = storeStudy(database, { agesMonths: [6, 12], windowDays: 30 })
  const blocks = storeBlocks(database, studyId, [{ ageMonths: 6 }, { ageMonths: 6 }])
  // Broken on 2 May, 5.5 and 6.8 months old
  const specimenIds = [
    ...glueBlocks(database, studyId, [blocks[0]!], '2030-11-16'),
    ...glueBlocks(database, studyId, [blocks[1]!], '2030-10-07'),
  ]
  const beside = 1 + Math.max(...specimenIds)
  addSpecimens(database, [specimenFields('C1-LL-1', { gluedOn: '2030-10-07' })], morning, 'bench')
  const breakIds = [...specimenIds, beside].map((specimenId) => storeBreak(database, specimenId, ramp))
  expect(breakGroup(database, breakIds[0]!)).toMatchObject({
    common: { ageMonths: 6 },
    breakIds: breakIds.slice(0, 2),
  })
  expect(breakGroup(database, breakIds[2]!)).toMatchObject({ common: { ageMonths: 7 }, breakIds: [breakIds[2]] })
})

test('a break without a specimen is alone', () => {
  const database = study([{}])
  const loose = storeBreak(database, null, ramp)
  expect(breakGroup(database, loose)).toEqual({ common: null, breakIds: [loose] })
  expect(breakGroup(database, 1).breakIds).toEqual([1])
})

test('a break that is not there is not found', () => {
  expect(() => breakGroup(study([]), 7)).toThrow(expect.objectContaining({ code: 'not-found' }))
})
