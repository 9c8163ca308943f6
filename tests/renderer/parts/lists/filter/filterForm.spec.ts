import { expect, test } from 'vitest'
import { asksAbout, readFilter, textsOfFilter } from '#renderer/parts/lists/filter/filterForm.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const [si, us] = [quantitiesIn('SI'), quantitiesIn('US')]
const none = textsOfFilter({})

test('a filter stands in its fields as it was, and is read from them as it was', () => {
  const filter = { adhesive: 'casein C1', studyId: 3, gapLeastMm: 0.1, ageMostMonths: 24 }
  expect(readFilter(textsOfFilter(filter), si).filter).toMatchObject(filter)
})

test('a gap is read in the unit of its field, or in the one behind it', () => {
  // Source: 1 in is 25.4 mm (NIST SP 811)
  expect(readFilter({ ...none, gapMostMm: '0.01' }, us).filter!.gapMostMm).toBeCloseTo(0.254, 12)
  expect(readFilter({ ...none, gapMostMm: '0.5 mm' }, us).filter!.gapMostMm).toBeCloseTo(0.5, 12)
})

test.each([
  ['gapLeastMm', 'wide'],
  ['ageMostMonths', 'old'],
  ['ageLeastMonths', '-1'],
  ['adhesive', 'x'.repeat(201)],
] as const)('says what is wrong with %s: %s', (key, text) => {
  const { filter, errors } = readFilter({ ...none, [key]: text }, si)
  expect(filter).toBeNull()
  expect(errors[key]).toMatch(/\.$/)
})

test('says that an end lies before its beginning', () => {
  expect(readFilter({ ...none, ageLeastMonths: '12', ageMostMonths: '6' }, si)).toEqual({
    filter: null,
    errors: { ageMostMonths: 'The end lies before the beginning.' },
  })
})

test('counts each factor once', () => {
  expect(asksAbout({})).toBe(0)
  expect(asksAbout({ adhesive: 'casein C1', gapLeastMm: 0, gapMostMm: 1, ageLeastMonths: 6, studyId: 1 })).toBe(4)
})
