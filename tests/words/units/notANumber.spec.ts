import { expect, it } from 'vitest'
import { askWhichNumber, inUnit, notANumber, strangeUnit } from '#words/units/notANumber.ts'

it('says what was typed and what to write in its place', () => {
  expect(notANumber(' ten ', 'it in mm')).toBe('“ten” is not a number. Write it in mm.')
  expect(strangeUnit('3 kg', 'it in mm')).toBe('“3 kg” has a unit that does not fit here. Write it in mm.')
})

it('gives both readings of an ambiguous number', () =>
  expect(askWhichNumber('1,234', { kind: 'ambiguous', asDecimal: 1.234, asThousands: 1234 })).toContain(
    '1.234 or 1234',
  ))

it('writes units that are words out', () => {
  expect(inUnit('in')).toBe('in inches')
  expect(inUnit('mm')).toBe('in mm')
})
