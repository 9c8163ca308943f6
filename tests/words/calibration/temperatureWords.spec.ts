import { expect, it } from 'vitest'
import { temperatureWords } from '#words/calibration/temperatureWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const words = (temperatureStartC: number | null, temperatureEndC: number | null, temperatureNote = '') =>
  temperatureWords({ temperatureStartC, temperatureEndC, temperatureNote }, quantitiesIn('SI').temperature)

it('says what was written down of the temperature, and a dash for nothing', () => {
  expect(words(14.5, 16)).toBe('14.5 to 16.0 °C')
  expect(words(14.5, 14.5, 'heater off')).toBe('14.5 °C, heater off')
  expect(words(null, null, 'cold')).toBe('cold')
  expect(words(null, null)).toBe('–')
})

it('says it in degrees Fahrenheit where the program shows US units', () => {
  // NIST SP 811: °F = 9/5 °C + 32.
  const read = { temperatureStartC: 15, temperatureEndC: 20, temperatureNote: '' }
  expect(temperatureWords(read, quantitiesIn('US').temperature)).toBe('59.0 to 68.0 °F')
})
