import { expect, it } from 'vitest'
import { lackOfFitWords } from '#words/calibration/fitWords.ts'

it('says whether a lack of fit is significant', () => {
  const test = { f: 214.7, lackDegreesOfFreedom: 18, pureDegreesOfFreedom: 20, pureErrorSD: 1, pValue: 1e-9 }
  expect(lackOfFitWords(test)).toMatch(/F\(18, 20\) = 214\.7.*significant/)
  expect(lackOfFitWords({ ...test, pValue: 0.4 })).toContain('not significant')
  expect(lackOfFitWords(null)).toContain('no step was repeated')
})
