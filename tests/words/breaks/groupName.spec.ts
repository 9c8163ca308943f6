import { expect, test } from 'vitest'
import type { GroupTraits } from '#contract/breaks/breakGroup.ts'
import { groupName } from '#words/breaks/groupName.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const named = (group: GroupTraits, system: 'SI' | 'US' = 'SI') =>
  plainText(groupName(group, quantitiesIn(system).length.text))
const common = { adhesive: 'casein C1', jointType: 'scarf', bondLineGapMm: 0, exposure: 'loft', ageMonths: 24 }

test('says in words what the breaks of a group have in common', () => {
  expect(named(common)).toBe('casein C1, scarf, tight joint, loft, 24 months old')
  expect(named({ ...common, bondLineGapMm: 0.5, ageMonths: 1 })).toBe('casein C1, scarf, gap 0.5 mm, loft, 1 month old')
})

test('says what is not known, and leaves out what was not named', () => {
  expect(named({ adhesive: 'epoxy E4', jointType: '', bondLineGapMm: null, exposure: '', ageMonths: null })).toBe(
    'epoxy E4, gap not measured, age not known',
  )
})

test('says the gap in the units that the person reads', () => {
  // NIST SP 811: 1 in = 25.4 mm
  expect(named({ ...common, bondLineGapMm: 0.254 }, 'US')).toContain('gap 0.01 in,')
})
