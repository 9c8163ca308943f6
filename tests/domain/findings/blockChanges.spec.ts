import { describe, expect, it } from 'vitest'
import { blockChanges, keptBlocksOf } from '#domain/findings/blockChanges.ts'

const block = (specimenId: number, change: object = {}) => ({
  ...{ specimenId, breakId: specimenId, number: `E4-${specimenId}`, group: 'E4', ageMonths: 0, strengthMPa: 9 },
  ...{ woodFailurePercent: null, excludedBecause: null },
  ...change,
})

describe('what changed since a finding was kept', () => {
  it('is nothing for the same blocks in any order', () => {
    expect(blockChanges([block(1), block(2)], [block(2), block(1)])).toEqual({ came: [], went: [], changed: [] })
  })
  it('names what came, went and changed, with what it was', () => {
    const now = block(2, { woodFailurePercent: 80 })
    expect(blockChanges([block(1), block(2)], [now, block(3)])).toEqual({
      came: [block(3)],
      went: [block(1)],
      changed: [{ before: block(2), now }],
    })
  })
  it('takes another break of a specimen for another result', () => {
    const { came, went } = blockChanges([block(1)], [block(1, { breakId: 9 })])
    expect([came.length, went.length]).toEqual([1, 1])
  })
})

it('keeps of a block what a finding rests on and nothing else, in one order', () => {
  const more = { simulated: true }
  const kept = keptBlocksOf([
    { ...block(2), ...more },
    { ...block(1), ...more },
  ])
  expect(kept).toEqual([block(1), block(2)])
})
