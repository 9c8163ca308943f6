import { describe, expect, it } from 'vitest'
import { demoAssessment, demoStrengthMPa } from '#engine/keeping/demo/demoJoints.ts'
import { blocksPerGroup, demoGroups } from '#engine/keeping/demo/demoStudy.ts'

const groupOf = (code: string, exposure: string, ageMonths: number) =>
  demoGroups.find((one) => one.adhesive.code === code && one.exposure === exposure && one.ageMonths === ageMonths)!
const indices = Array.from({ length: blocksPerGroup }, (_, index) => index)
const strengths = (code: string, exposure: string, ageMonths: number) =>
  indices.map((index) => demoStrengthMPa(groupOf(code, exposure, ageMonths), index, `plank ${1 + index}`))
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

describe('the joints of the demo', () => {
  it('lose most of their strength in the bilge with casein, and little with any other adhesive', () => {
    const kept = (code: string) => mean(strengths(code, 'bilge', 24)) / mean(strengths(code, 'bilge', 0))
    expect(kept('C1')).toBeLessThan(0.35)
    for (const code of ['E4', 'F6', 'R2', 'U3', 'V5']) expect(kept(code)).toBeGreaterThan(0.85)
  })

  it('keep theirs in the loft', () => {
    for (const code of ['C1', 'E4', 'F6', 'R2', 'U3', 'V5'])
      expect(mean(strengths(code, 'loft', 24)) / mean(strengths(code, 'loft', 0))).toBeGreaterThan(0.9)
  })

  it('never come out with no strength at all', () => {
    for (const group of demoGroups)
      for (const index of indices) expect(demoStrengthMPa(group, index, 'plank 1')).toBeGreaterThan(0.5)
  })

  it('differ from board to board, the same way for every adhesive', () => {
    const share = (code: string) =>
      demoStrengthMPa(groupOf(code, 'loft', 0), 0, 'plank 1') / demoStrengthMPa(groupOf(code, 'loft', 0), 0, 'plank 2')
    expect(share('C1')).not.toBeCloseTo(1, 3)
    expect(share('R2')).toBeCloseTo(share('C1'), 9)
  })
})

it('assesses wood failure to the nearest 5 %, and less of it where the bond has gone soft', () => {
  for (const group of demoGroups)
    for (const index of indices) {
      const { woodFailurePercent } = demoAssessment(group, index)
      expect(woodFailurePercent % 5).toBe(0)
      expect(woodFailurePercent).toBeGreaterThanOrEqual(0)
      expect(woodFailurePercent).toBeLessThanOrEqual(100)
    }
  const wood = (ageMonths: number) =>
    mean(indices.map((index) => demoAssessment(groupOf('C1', 'bilge', ageMonths), index).woodFailurePercent))
  expect(wood(24)).toBeLessThan(wood(0) - 10)
})
