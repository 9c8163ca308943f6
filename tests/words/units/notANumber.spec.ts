import { expect, it } from 'vitest'
import { notANumber } from '#words/units/notANumber.ts'

it('says what was typed and what to write in its place', () => {
  expect(notANumber(' ten ', 'it in mm')).toBe('“ten” is not a number. Write it in mm.')
})
