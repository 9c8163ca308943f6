import { expect, it } from 'vitest'
import { blockLabel } from '#exchange/labels/blockLabel.ts'

const group = { adhesive: 'casein C1', jointType: 'lap', gapMm: 0, exposure: 'loft', ageMonths: 12 }

it('says what a block is of, and before its joint, for which a small label may lack room, its age and exposure', () => {
  expect(blockLabel({ number: '28', group }, true)).toEqual({
    number: '28',
    group: 'casein C1, 1 year, loft, lap, tight joint',
  })
})

it('calls a planned block of no age a spare, and says nothing of the age of any other', () => {
  const ageless = { number: '28', group: { ...group, ageMonths: null } }
  expect(blockLabel(ageless, true).group).toBe('casein C1, spare, loft, lap, tight joint')
  expect(blockLabel(ageless, false).group).toBe('casein C1, loft, lap, tight joint')
})

it('has the number alone where nothing is known', () => {
  expect(blockLabel({ number: '28', group: null }, true)).toEqual({ number: '28', group: '' })
})
