import { expect, it } from 'vitest'
import type { Attachment } from '#contract/specimens/attachment.ts'
import type { WoodReading } from '#contract/specimens/pictureProcedures.ts'
import { othersNotKept, pictureFacts, readingWords, toNearest5 } from '#words/specimens/pictureWords.ts'

it.each([
  [0, 0],
  [2.4, 0],
  [2.5, 5],
  [47.4, 45],
  [99, 100],
])('takes %d percent to the nearest 5', (percent, expected) => {
  expect(toNearest5(percent)).toBe(expected)
})

it('says when a picture was added, by whom if that is known, and how large it is', () => {
  const picture = { recordedAt: '2031-05-02T09:30:00.000Z', by: 'Ada', bytes: 3_240_000 } as Attachment
  expect(pictureFacts(picture)).toMatch(/^Added 2 May 2031.* by Ada, 3\.2 MB, kept as it came\.$/)
  expect(pictureFacts({ ...picture, by: '' })).not.toMatch(/ by /)
})

it('says the newest decision beside what the picture gave', () => {
  const reading = (decidedPercent: number) => ({ decidedPercent, proposedPercent: 43.21 }) as WoodReading
  expect(readingWords([reading(40), reading(45)])).toBe('45 % wood failure decided, 43.2 % by the picture.')
  expect(readingWords([])).toBe('Nothing read from it yet.')
})

it('names the pictures that were not kept besides the first, and counts them where they are many', () => {
  expect(othersNotKept([])).toBe('')
  expect(othersNotKept(['a.jpg', 'b.jpg'])).toBe('Not kept either: "a.jpg", "b.jpg".')
  const many = Array.from({ length: 12 }, (_, i) => `${i}.jpg`)
  expect(othersNotKept(many)).toMatch(/^Not kept either: "0\.jpg", .*"9\.jpg" and 2 others\.$/)
})
