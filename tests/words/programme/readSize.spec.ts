import { expect, it } from 'vitest'
import { readSize } from '#words/programme/readSize.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const inMm = (text: string) => readSize(text, quantitiesIn('SI').length)
const inInches = (text: string) => readSize(text, quantitiesIn('US').length)

it('reads what calipers and people type, in the unit of the field', () => {
  expect(['30.12', '30,12', '30,125', ' +0030.12', '30.12 mm'].map(inMm)).toEqual(
    [30.12, 30.12, 30.125, 30.12, 30.12].map((stored) => ({ stored })),
  )
  // NIST SP 811: 1 in = 25.4 mm
  expect(['1.181', '1 3/16', '1-3/16', '1,181', '¾', '30 mm'].map(inInches)).toEqual(
    [29.9974, 30.1625, 30.1625, 29.9974, 19.05, 30].map((stored) => ({ stored })),
  )
  expect(inMm('1 3/16 in')).toEqual({ stored: 30.1625 })
  expect(inMm('1 3/16"')).toEqual({ stored: 30.1625 })
})

it('reads nothing as nothing', () => expect(inMm('  ')).toEqual({ stored: null }))

it('refuses what is no length, in one sentence', () => {
  expect(inMm('thirty')).toEqual({ error: '“thirty” is not a number. Write a length, as 30.2 or 1 3/16.' })
  expect(inMm('30 N')).toEqual({
    error: '“30 N” has a unit that does not fit here. Write a length, as 30.2 or 1 3/16.',
  })
  for (const text of ['0', '-30']) expect(inMm(text)).toEqual({ error: 'A side must be longer than nothing.' })
})
