import { expect, it } from 'vitest'
import { conditionOf } from '#exchange/import/conditionOf.ts'

it.each([
  ['Dry, 12 months', 'Dry', 12],
  ['Soaked - 2 years', 'Soaked', 24],
  ['bilge (6 mo)', 'bilge', 6],
  ['12 months', '', 12],
  ['after 1.5 years', '', 18],
  ['after 1.1 years', '', 13.2],
  ['loft', 'loft', null],
  ['20 m of shelf', '20 m of shelf', null],
  ['Dry, 6 months, 12 months', 'Dry, 6 months, 12 months', null],
  ['', '', null],
])('reads the title “%s” as the exposure “%s” at %s months', (title, exposure, ageMonths) => {
  expect(conditionOf(title)).toEqual({ exposure, ageMonths })
})
