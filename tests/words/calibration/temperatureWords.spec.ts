import { expect, it } from 'vitest'
import { temperatureWords } from '#words/calibration/temperatureWords.ts'

const words = (temperatureStartC: number | null, temperatureEndC: number | null, temperatureNote = '') =>
  temperatureWords({ temperatureStartC, temperatureEndC, temperatureNote })

it('says what was written down of the temperature, and a dash for nothing', () => {
  expect(words(14.5, 16)).toBe('14.5 to 16.0 °C')
  expect(words(14.5, 14.5, 'heater off')).toBe('14.5 °C, heater off')
  expect(words(null, null, 'cold')).toBe('cold')
  expect(words(null, null)).toBe('–')
})
