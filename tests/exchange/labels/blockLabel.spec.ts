import { expect, it } from 'vitest'
import { blockLabel } from '#exchange/labels/blockLabel.ts'

const group = { adhesive: 'casein C1', jointType: 'lap', gapMm: 0, exposure: 'loft', ageMonths: 12 }

it('says what a block is of, and for which age', () => {
  expect(blockLabel({ number: '28', group }, true)).toEqual({
    number: '28',
    group: 'casein C1, lap, tight joint, loft, 1 year',
  })
})

it('calls a planned block of no age a spare, and says nothing of the age of any other', () => {
  const ageless = { number: '28', group: { ...group, ageMonths: null } }
  expect(blockLabel(ageless, true).group).toMatch(/, spare$/)
  expect(blockLabel(ageless, false).group).toMatch(/, loft$/)
})

it('has the number alone where nothing is known', () => {
  expect(blockLabel({ number: '28', group: null }, true)).toEqual({ number: '28', group: '' })
})
