import { describe, expect, it } from 'vitest'
import type { ClimateCount, ClimateOutcome } from '#contract/findings/climateAnswers.ts'
import {
  climateCountWords,
  climateGapsWords,
  climateGapWords,
  climateOutcomeWords,
  countedFromWords,
  coveredWords,
  exposureClimateWords,
  loggerRowWords,
  percentDone,
  swingSizeWords,
} from '#words/findings/climate/climateWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const si = quantitiesIn('SI')
const count: ClimateCount = {
  ...{ hours: 8766, temperatureC: { min: -4.2, mean: 11.3, max: 31 } },
  humidityPercent: { min: 45, mean: 72.04, max: 98 },
  moisturePercent: { min: 8.1, mean: 13, max: 22 },
  ...{ freezeThawCycles: 14, temperatureSwings: [], moistureSwings: [] },
  hoursBeyond: { temperatureBelow: 0, temperatureAbove: 0, humidityBelow: 0, humidityAbove: 0 },
}
const loft = { exposure: 'loft', fromS: 0, toS: 86_400 * 365, simulated: false, whole: count }

describe('what climate blocks saw', () => {
  it('is one sentence of air, moisture and frost', () => {
    expect(plainText(exposureClimateWords(loft, si))).toBe(
      'Blocks in loft had air of -4.2 to 31.0 °C (mean 11.3), 45 to 98 % relative humidity (mean 72), which brings wood to 8.1 to 22 % moisture in the end; it froze and thawed 14 times (1 Jan 1970 to 1 Jan 1971).',
    )
  })

  it('says that it never froze, that it did once, that nobody measured it, and nothing of humidity where none was read', () => {
    const words = (change: Partial<ClimateCount>, simulated = false) =>
      plainText(exposureClimateWords({ ...loft, simulated, whole: { ...count, ...change } }, si))
    expect(words({ freezeThawCycles: 0 })).toContain('it never froze and thawed')
    expect(words({ freezeThawCycles: 1 })).toContain('it froze and thawed once')
    expect(words({}, true)).toMatch(/, simulated\)\.$/)
    expect(words({ humidityPercent: null, moisturePercent: null })).not.toContain('moisture')
  })

  it('is in the units of the person', () => {
    expect(exposureClimateWords(loft, quantitiesIn('US'))).toContain('24.4 to 87.8 °F')
    expect(swingSizeWords(5, quantitiesIn('US'))).toBe('9 °F or more')
    expect(swingSizeWords(4, null)).toBe('4 % or more')
  })

  it('says from where on frost counts, in both systems, and that no standard says so', () => {
    expect(plainText(countedFromWords(si))).toMatch(
      /^Frozen is a reading of -1\.0 °C or less, thawed again one of 1\.0 °C or more\./,
    )
    expect(plainText(countedFromWords(quantitiesIn('US')))).toMatch(
      /30\.2 °F or less, thawed again one of 33\.8 °F or more/,
    )
    expect(countedFromWords(si)).toMatch(/no standard/)
  })

  it('is a line for a year', () => {
    expect(plainText(climateCountWords({ ...count, freezeThawCycles: 1 }, si))).toContain(
      '365 days of readings: -4.2 to 31.0 °C (mean 11.3); 45 to 98 % RH (mean 72)',
    )
    expect(climateCountWords({ ...count, humidityPercent: null, moisturePercent: null }, si)).not.toContain('RH')
  })
})

describe('what became of a file', () => {
  const outcome: ClimateOutcome = {
    ...{ new: 1, alreadyThere: 2, rejected: 1, fileSha256: '', fromS: 0, toS: 60, rows: [], gaps: [], gapCount: 0 },
    ...{ newestFirst: false, dryRun: false },
  }
  it('is counted in one sentence', () => {
    expect(climateOutcomeWords(outcome)).toBe(
      '1 reading is new, from 1 Jan 1970, 00:00 UTC to 1 Jan 1970, 00:01 UTC; 2 there already, 1 row rejected.',
    )
    expect(climateOutcomeWords({ ...outcome, new: 0, dryRun: true, fromS: null, toS: null })).toMatch(
      /^0 readings would be new; 2/,
    )
    expect(climateOutcomeWords({ ...outcome, newestFirst: true })).toContain('read from its end')
  })

  it('is a sentence for each row', () => {
    const row = { row: 7, fate: 'new', timeS: 0, temperature: 5.5, humidityPercent: 60, reason: null } as const
    expect(loggerRowWords(row, 'C')).toBe('Row 7: 1 Jan 1970, 00:00 UTC, 5.5 °C, 60 % relative humidity.')
    expect(loggerRowWords({ ...row, humidityPercent: null }, 'F')).toContain('5.5 °F, no relative humidity.')
    expect(loggerRowWords({ ...row, fate: 'already-there', reason: 'Kept.' }, 'C')).toMatch(/humidity\. Kept\.$/)
    expect(loggerRowWords({ ...row, fate: 'rejected', reason: 'Row 7: no.' }, 'C')).toBe('Row 7: no.')
  })

  it('names gaps, and how long they are', () => {
    expect(climateGapWords({ fromS: 0, toS: 5400 })).toBe(
      'No reading from 1 Jan 1970, 00:00 UTC to 1 Jan 1970, 01:30 UTC: 1.5 hours.',
    )
    expect(climateGapsWords(0, 0)).toMatch(/^No gap/)
    expect(climateGapsWords(2, 100)).toMatch(/^2 gaps .*, 4 days together\.$/)
    expect([10, 100, 365 * 24, 366 * 24, 18_000].map(coveredWords)).toEqual([
      ...['10.0 hours', '4 days', '365 days', '366 days', '2.1 years'],
    ])
    expect([percentDone({ done: 1, total: 3 }), percentDone({ done: 0, total: 0 })]).toEqual(['33 %', '0 %'])
  })
})
