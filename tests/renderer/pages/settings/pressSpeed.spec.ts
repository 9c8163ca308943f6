import { expect, it } from 'vitest'
import { readPressSpeed } from '#renderer/pages/settings/pressSpeed.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const SI = quantitiesIn('SI')

it('takes mm/min as mm/s, nothing as unknown, and refuses what is no speed', () => {
  expect(readPressSpeed('3', SI)).toEqual({ pressSpeedMmPerS: 0.05 })
  expect(readPressSpeed(' ', SI)).toEqual({ pressSpeedMmPerS: null })
  expect(readPressSpeed('0', SI)).toEqual({ error: 'The speed must be more than 0 mm/min.' })
  expect(readPressSpeed('slow', SI)).toHaveProperty('error')
})
