import { expect, it } from 'vitest'
import { labelProcedures } from '#contract/programme/labelProcedures.ts'
import { isTouched } from '#contract/topics.ts'
import { sheetOfGrid } from '#domain/programme/labels/sheetGeometry.ts'

const { input, reads } = labelProcedures['labels.pages']
const asked = (choice: object) => input.parse({ choice, sheet: sheetOfGrid('A4', 5, 13), from: 0, count: 1 })

it('labels of a study are drawn again when it was written, all others whenever a number may have been given', () => {
  expect(isTouched(reads(asked({ kind: 'study', studyId: 1 })), ['study 1'])).toBe(true)
  expect(isTouched(reads(asked({ kind: 'study', studyId: 1 })), ['specimen 4'])).toBe(false)
  const numbers = reads(asked({ kind: 'numbers', first: 1, last: 9 }))
  for (const written of ['study 7', 'specimen 4'] as const) expect(isTouched(numbers, [written])).toBe(true)
})

it('takes no range of numbers that nobody prints at once', () => {
  expect(() => asked({ kind: 'numbers', first: 1, last: 50_000 })).not.toThrow()
  expect(() => asked({ kind: 'numbers', first: 1, last: 50_001 })).toThrow('50000 numbers')
})
