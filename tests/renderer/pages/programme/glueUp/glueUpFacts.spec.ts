import { expect, it } from 'vitest'
import { glueUpFields } from '#contract/programme/glueUp.ts'
import { changedFacts, glueUpFacts } from '#renderer/pages/programme/glueUp/glueUpFacts.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

it('says what is known of a glue-up, in the units of the program, and nothing of what nobody wrote', () => {
  const fields = glueUpFields.parse({
    ...{ gluedOn: '2031-03-01', temperatureC: 20, humidityPercent: 60, spreadGPerM2: 180 },
    lots: [{ adhesive: 'casein C1', lot: 'C1-2' }],
  })
  const facts = (system: 'SI' | 'US') =>
    glueUpFacts(fields, quantitiesIn(system)).map(([name, words]) => `${name}: ${plainText(words)}`)
  expect(facts('SI')).toEqual([
    'Lots: casein C1: C1-2',
    'Temperature: 20.0 °C',
    'Relative humidity: 60 %',
    'Spread: 180 g/m²',
  ])
  expect(facts('US')).toContain('Temperature: 68.0 °F')
})

it('says of a correction how each thing stood that it changed', () => {
  const was = glueUpFields.parse({ gluedOn: '2030-03-01', temperatureC: 20, people: 'Ada' })
  const is = glueUpFields.parse({ gluedOn: '2031-03-01', temperatureC: 20, people: 'Ada', spreadGPerM2: 180 })
  expect(plainText(changedFacts(was, is, quantitiesIn('SI')))).toBe('Glued on: 1 Mar 2030, Spread: -')
})
