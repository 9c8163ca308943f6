import { expect, it } from 'vitest'
import { cellsOf } from '#domain/programme/study/cells.ts'
import { studyDoubts } from '#domain/programme/study/studyDoubts.ts'
import {
  demoAdhesives,
  demoBlockName,
  demoGluedOn,
  demoGroups,
  demoSizes,
  demoStart,
  demoStudyFields,
  isOfGroup,
} from '#engine/keeping/demo/demoStudy.ts'

const study = demoStudyFields(demoStart('2031-05-31'))

it('plans just the groups that the school has made, without a doubt that boards or ages raise', () => {
  const cells = cellsOf(study)
  expect(cells).toHaveLength(demoGroups.length)
  expect(demoGroups.every((group) => cells.some((cell) => isOfGroup(group, cell)))).toBe(true)
  expect(studyDoubts(study)).toEqual([])
  expect(study.demo).toBe(true)
})

it('was glued within ten days, so that the pull at three years is due on that day', () => {
  expect(study.startOn).toBe('2028-05-26')
  expect(demoGluedOn(study.startOn!, demoAdhesives.at(-1)!)).toBe('2028-06-05')
})

it('measures each block as calipers do', () => {
  const blocks = demoSizes(
    demoAdhesives[0]!,
    Array.from({ length: 50 }, () => ({ exposure: 'loft' })),
  )
  for (const { areaMm2, overlapLengthMm, overlapWidthMm } of blocks) {
    expect(areaMm2).toBeCloseTo(overlapLengthMm * overlapWidthMm, 2)
    expect(20 * overlapLengthMm).toBeCloseTo(Math.round(20 * overlapLengthMm), 9)
  }
  expect(new Set(blocks.map(({ areaMm2 }) => areaMm2)).size).toBeGreaterThan(25)
})

it('calls every block by a name of its own', () => {
  expect(new Set(demoGroups.map((group) => demoBlockName(group, 0))).size).toBe(demoGroups.length)
})
