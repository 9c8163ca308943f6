import { expect, it } from 'vitest'
import {
  bandPlaceWords,
  climatePanelWords,
  readingsAbout,
  storedStrengthWords,
  toComeWords,
} from '#words/findings/climate/climateFigureWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const text = (value: number) => `${value} %`
const band = {
  ...{ timeS: Float64Array.of(0, 86_400), min: Float64Array.of(40, 50), mean: Float64Array.of(45, 55) },
  max: Float64Array.of(50, 60),
}

it('says the span, how far it goes, where readings are missing and which days are marked', () => {
  const panel = { name: 'humidity', quantity: { text }, band, gaps: [], days: [] }
  expect(climatePanelWords(panel)).toBe('From 1 Jan 1970 to 2 Jan 1970 the humidity was 40 % to 60 %.')
  expect(climatePanelWords({ ...panel, gaps: [{}], days: [{ timeS: 0, name: 'blocks broken' }] })).toMatch(
    / Readings are missing in 1 stretch\. Marked: blocks broken on 1 Jan 1970\.$/,
  )
})

it('says which files a figure rests on', () => {
  const files = [{ fileName: 'loft.csv', fileSha256: 'ab'.repeat(32) }]
  expect(readingsAbout(files)).toBe('Readings: loft.csv (abababababababab).')
})

it('says one place of a band, with its range where it has one', () => {
  expect(bandPlaceWords({ timeS: 0, min: 40, mean: 45, max: 50 }, text)).toBe('1 Jan 1970: 45 %, from 40 % to 50 %')
  expect(bandPlaceWords({ timeS: 0, min: 45, mean: 45, max: 45 }, text)).toBe('1 Jan 1970: 45 %')
})

it('says the means of a series age by age, or that there is none', () => {
  const { strength } = quantitiesIn('SI')
  const age = { ageMonths: 1, brokenS: 0, n: 1, meanMPa: 9, lowMPa: null, highMPa: null }
  expect(storedStrengthWords('casein', [age], strength)).toMatch(
    /^casein\. 1 month old: mean 9\.\d+\u00a0MPa of 1 block, broken/,
  )
  expect(storedStrengthWords('casein', [], strength)).toContain('No block of casein')
})

it('names the next pulls to come, and counts those after them', () => {
  const pulls = [6, 12, 24, 36, 48, 60].map((ageMonths) => ({ ageMonths, dueS: Date.UTC(2026, ageMonths, 20) / 1000 }))
  expect(toComeWords(pulls.slice(0, 2))).toBe('Pulls to come, by age: 6 months on 20 Jul 2026, 1 year on 20 Jan 2027.')
  expect(toComeWords(pulls)).toMatch(/, 3 years on 20 Jan 2029, and 2 more until 20 Jan 2031\.$/)
  expect(toComeWords(pulls.slice(0, 5))).not.toContain('more')
})
