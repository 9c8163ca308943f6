import { expect, test } from 'vitest'
import { groupName } from '#engine/core/groupName.ts'

const common = { adhesive: 'casein C1', jointType: 'scarf', bondLineGapMm: 0, exposure: 'loft', ageMonths: 24 }

test('says in words what the breaks of a group have in common', () => {
  expect(groupName(common)).toBe('casein C1, scarf, tight joint, loft, 24 months old')
  expect(groupName({ ...common, bondLineGapMm: 0.5, ageMonths: 1 })).toBe(
    'casein C1, scarf, gap 0.5 mm, loft, 1 month old',
  )
})

test('says what is not known, and leaves out what was not named', () => {
  expect(groupName({ adhesive: 'epoxy E4', jointType: '', bondLineGapMm: null, exposure: '', ageMonths: null })).toBe(
    'epoxy E4, gap not measured, age not known',
  )
})
