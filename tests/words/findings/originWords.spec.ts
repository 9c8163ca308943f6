import { expect, it } from 'vitest'
import { resultsAbout } from '#words/findings/originWords.ts'

it('says how torn wood is treated and from which data', () => {
  expect(resultsAbout('as observed', '0123456789abcdef0123')).toBe('Torn wood: as observed. Data 0123456789abcdef.')
})
