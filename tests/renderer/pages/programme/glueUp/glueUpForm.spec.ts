import { expect, it } from 'vitest'
import { emptyGlueUp, readGlueUp, textsOfGlueUp } from '#renderer/pages/programme/glueUp/glueUpForm.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const texts = (change: Partial<ReturnType<typeof emptyGlueUp>>) => ({ ...emptyGlueUp('2031-03-01'), ...change })
const read = (change: Partial<ReturnType<typeof emptyGlueUp>>, system: 'SI' | 'US' = 'SI') =>
  readGlueUp(texts(change), ['casein C1', 'epoxy E4'], quantitiesIn(system))

it('reads a glue-up, with what nobody wrote left open and the lots of its own adhesives alone', () => {
  const { fields } = read({
    ...{ temperatureC: '19,5', humidityPercent: '62', spreadGPerM2: '180', clampTimeMin: '720', people: 'Ana' },
    lots: { 'casein C1': ' C1-2 ', 'epoxy E4': '', 'hide H9': 'old' },
  })
  expect(fields).toEqual({
    ...{ gluedOn: '2031-03-01', temperatureC: 19.5, humidityPercent: 62, spreadGPerM2: 180, openTimeMin: null },
    ...{ clampTimeMin: 720, pressureMPa: null, woodMoisturePercent: null, people: 'Ana', notes: '' },
    lots: [{ adhesive: 'casein C1', lot: 'C1-2' }],
  })
})

it('reads temperature and pressure in the units of the program', () => {
  // NIST SP 811: °F = 9/5 °C + 32; 1 psi = 6894.757 Pa
  const { fields } = read({ temperatureC: '68', pressureMPa: '100' }, 'US')
  expect(fields?.temperatureC).toBeCloseTo(20, 9)
  expect(fields?.pressureMPa).toBeCloseTo(0.6894757, 7)
})

it('says of each field what is wrong with it', () => {
  expect(read({ temperatureC: 'warm', humidityPercent: '130', woodMoisturePercent: '0' }).errors).toEqual({
    temperatureC: '“warm” is not a number. Write the temperature in °C.',
    humidityPercent: 'No relative humidity is that: look at the number and its unit.',
    woodMoisturePercent: 'No moisture of the wood is that: look at the number and its unit.',
  })
})

it('wants a day that exists', () => {
  for (const gluedOn of ['', '2031-02-30'])
    expect(read({ gluedOn }).errors).toEqual({ gluedOn: 'Choose the day of the glue-up.' })
})

it('reads back from what it shows of a glue-up what is kept of it', () => {
  const kept = read({ temperatureC: '18.437', pressureMPa: '0,7', notes: 'two clamps', lots: { 'casein C1': 'C1-2' } })
    .fields!
  const shown = textsOfGlueUp(kept)
  expect(shown).toMatchObject({ temperatureC: '18.437', humidityPercent: '', lots: { 'casein C1': 'C1-2' } })
  expect(readGlueUp(shown, ['casein C1'], quantitiesIn('SI')).fields).toEqual(kept)
})
