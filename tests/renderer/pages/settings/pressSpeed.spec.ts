import { expect, it } from 'vitest'
import { readPressSpeed } from '#renderer/pages/settings/pressSpeed.ts'

it('takes mm/min as mm/s, nothing as unknown, and refuses what is no speed', () => {
  expect(readPressSpeed('3', 60, 'mm/min')).toEqual({ pressSpeedMmPerS: 0.05 })
  expect(readPressSpeed(' ', 60, 'mm/min')).toEqual({ pressSpeedMmPerS: null })
  expect(readPressSpeed('0', 60, 'mm/min')).toEqual({ error: 'The speed must be more than 0 mm/min.' })
  expect(readPressSpeed('slow', 60, 'mm/min')).toHaveProperty('error')
})
