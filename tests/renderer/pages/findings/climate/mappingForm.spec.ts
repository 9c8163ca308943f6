import { describe, expect, it } from 'vitest'
import { climateMapping } from '#contract/findings/climate.ts'
import type { ClimateProposal } from '#contract/findings/climateAnswers.ts'
import { mappingOf, missingIn, proposedTexts } from '#renderer/pages/findings/climate/mappingForm.ts'

const found = (change: Partial<ClimateProposal> = {}): ClimateProposal => ({
  ...{ sheets: [], sheet: null, headerRow: 2, headings: [], time: 'Time', timeOfDay: null, dateFormat: null },
  ...{ dateFormats: ['D/M/YYYY', 'M/D/YYYY'], temperature: 'Temp', temperatureUnit: null, humidity: 'RH' },
  ...{ decimal: ',', kept: null, ...change },
})

describe('a mapping being typed', () => {
  it('begins with what the headings suggest, and asks for what they leave open', () => {
    const texts = proposedTexts(found())
    expect(texts).toMatchObject({ time: 'Time', temperature: 'Temp', humidity: 'RH', unit: '', timeZone: '' })
    expect(Object.keys(missingIn(texts, found()))).toEqual(['unit', 'timeZone', 'dateFormat'])
    expect(Object.keys(missingIn({ ...texts, time: '', temperature: '' }, found()))).toContain('temperature')
    expect(missingIn(texts, found({ dateFormats: [] }))).not.toHaveProperty('dateFormat')
  })

  it('begins with the mapping of an earlier file where there is one', () => {
    const kept = climateMapping.parse({
      ...{ time: { column: 'Time', dateFormat: 'M/D/YYYY' }, timeZone: 'UTC', timeOfDay: { column: 'Hour' } },
      temperature: { column: 'Temp', unit: 'F' },
    })
    const texts = proposedTexts(found({ kept }))
    expect(missingIn(texts, found({ kept }))).toEqual({})
    expect(mappingOf(texts, found())).toEqual({ ...kept, headerRow: 2 })
  })

  it('becomes the mapping that the file is read with', () => {
    const texts = { ...proposedTexts(found()), unit: 'C', timeZone: ' +01:00 ', dateFormat: 'D/M/YYYY' }
    expect(mappingOf(texts, { headerRow: 2, sheet: 'Readings' })).toEqual({
      ...{ sheet: 'Readings', headerRow: 2, decimal: ',', timeZone: '+01:00' },
      ...{ time: { column: 'Time', dateFormat: 'D/M/YYYY' }, temperature: { column: 'Temp', unit: 'C' } },
      humidity: { column: 'RH' },
    })
    expect(mappingOf({ ...texts, dateFormat: 'soon' }, { headerRow: 2, sheet: null })).toBeNull()
  })
})
