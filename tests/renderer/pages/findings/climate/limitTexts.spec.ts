import { expect, it } from 'vitest'
import { readLimit } from '#renderer/pages/findings/climate/limitTexts.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { temperature } = quantitiesIn('US')

it('reads a limit in the units of the person', () => {
  expect(readLimit('temperatureBelowC', '32', temperature)).toEqual({ limit: 0 })
  expect(readLimit('humidityAbovePercent', '80', temperature)).toEqual({ limit: 80 })
})

it('refuses what the air of a store cannot be', () => {
  for (const text of ['', 'warm', '900'])
    expect(readLimit('temperatureAboveC', text, temperature), text).toHaveProperty('error')
  expect(readLimit('humidityBelowPercent', '120', temperature)).toHaveProperty('error')
})
