import { expect, it } from 'vitest'
import { cellsOf } from '#domain/programme/study/cells.ts'
import { studyDoubts } from '#domain/programme/study/studyDoubts.ts'
import {
  brokenOnMs,
  demoAssessment,
  demoBlockName,
  demoGluedOn,
  demoGroups,
  demoOverruled,
  demoSetAside,
  demoSizes,
  demoStart,
  demoStudyFields,
  isOfGroup,
} from '#engine/keeping/demoStudy.ts'

const today = '2031-05-31'
const study = demoStudyFields(demoStart(today))

it('plans just the groups that the school has made, without a doubt that boards or ages raise', () => {
  const cells = cellsOf(study)
  expect(cells).toHaveLength(demoGroups.length)
  expect(demoGroups.every((group) => cells.some((cell) => isOfGroup(group, cell)))).toBe(true)
  expect(studyDoubts(study)).toEqual([])
  expect(study.demo).toBe(true)
})

it('was glued so that the pull at three months is due on that day, and the first blocks were broken before', () => {
  // 31 May - 3 months is the last day of February, and five days before that is the 23rd
  expect(study.startOn).toBe('2031-02-23')
  expect(
    demoGroups
      .map((group) => demoGluedOn(study.startOn!, group))
      .sort()
      .at(-1),
  ).toBe('2031-03-05')
  for (const group of demoGroups)
    expect(brokenOnMs(study.startOn!, group)).toBeLessThan(Date.parse(`${today}T00:00:00.000Z`))
})

it('leaves most of the specimens waiting, each with a size that calipers give', () => {
  expect(demoGroups.reduce((sum, group) => sum + group.broken, 0)).toBe(64)
  for (const { areaMm2, overlapLengthMm, overlapWidthMm } of demoGroups.flatMap(demoSizes))
    expect(areaMm2).toBeCloseTo(overlapLengthMm * overlapWidthMm, 2)
})

it('sets aside only blocks that were broken', () => {
  const broken = demoGroups.flatMap((group) =>
    Array.from({ length: group.broken }, (_, index) => demoBlockName(group, index)),
  )
  for (const name of Object.keys({ ...demoSetAside, ...demoOverruled })) expect(broken).toContain(name)
})

it('assesses wood failure to the nearest 5 %', () => {
  for (const group of demoGroups)
    for (let index = 0; index < group.broken; index++) {
      const { woodFailurePercent } = demoAssessment(group, index)
      expect(woodFailurePercent % 5).toBe(0)
      expect(woodFailurePercent).toBeGreaterThanOrEqual(0)
      expect(woodFailurePercent).toBeLessThanOrEqual(100)
    }
})
