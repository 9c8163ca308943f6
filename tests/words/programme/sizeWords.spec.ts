import { expect, it } from 'vitest'
import { sizeDoubts } from '#domain/programme/glueUp/sizeDoubts.ts'
import { sizeDoubtWords } from '#words/programme/sizeWords.ts'
import { plainText } from '#words/units/plainText.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const asked = (lengthMm: number | null, widthMm: number | null, system: 'SI' | 'US' = 'SI') =>
  sizeDoubts([{ lengthMm, widthMm }], { lengthMm: 30, widthMm: 20 })[0]!.map((doubt) =>
    plainText(sizeDoubtWords(doubt, quantitiesIn(system).length)),
  )

it('asks about a size in the words of what may be wrong with it', () => {
  expect(asked(302, 20)).toEqual(['The length is 302 mm: should the point stand elsewhere, 30.2 mm?'])
  expect(asked(1.18, 20)).toEqual(['The length is 1.18 mm: in the other unit it would be 29.97 mm.'])
  expect(asked(36, 20)).toEqual(['The length is 36 mm, far from 30 mm. Measure again?'])
  expect(asked(20, 30)).toEqual(['Length and width seem to be in each other’s place.'])
  expect(asked(30, null)).toEqual(['The width is missing: without it there is no area.'])
})

it('speaks in inches where the program does', () =>
  // NIST SP 811: 1 in = 25.4 mm
  expect(asked(36, 20, 'US')).toEqual(['The length is 1.417 in, far from 1.181 in. Measure again?']))
