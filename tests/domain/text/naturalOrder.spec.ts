import { expect, test } from 'vitest'
import { folded, naturalKey, searchWords } from '#domain/text/naturalOrder.ts'

function sorted(...numbers: string[]): string[] {
  return numbers.toSorted((a, b) => (naturalKey(a) < naturalKey(b) ? -1 : 1))
}

test('counts as people do', () => {
  expect(sorted('C1-LL-10', 'C1-LL-2', 'C1-LL-1', 'C10-LL-1', 'C2-LL-1')).toEqual([
    'C1-LL-1',
    'C1-LL-2',
    'C1-LL-10',
    'C2-LL-1',
    'C10-LL-1',
  ])
})

test('takes leading zeros, case and accents for nothing', () => {
  expect(naturalKey('c1-ll-003')).toBe(naturalKey('C1-LL-3'))
  expect(naturalKey('0')).toBe(naturalKey('000'))
  expect(folded('Épicéa')).toBe('epicea')
})

test.each([
  ['a zero-width space', 'C1-LL-3\u200b'],
  ['full-width digits', 'C\uff11-LL-\uff13'],
  ['a no-break space at the end', 'C1-LL-3\u00a0'],
  ['other dashes', 'C1\u2010LL\u22123'],
  ['a mark of direction', '\u202aC1-LL-3\u202c'],
  ['a control character', 'C1-LL-3\u0007'],
  ['a selector of variants', 'C1-LL-3\ufe0f'],
])('takes two numbers for one that differ by %s', (_what, other) => {
  expect(folded(other)).toBe(folded('C1-LL-3'))
  expect(naturalKey(other)).toBe(naturalKey('C1-LL-3'))
})

test('keeps the order of numbers far longer than a double can hold', () => {
  const long = '9'.repeat(180)
  expect(sorted(`A${long}0`, `A${long}`, 'A5')).toEqual(['A5', `A${long}`, `A${long}0`])
})

test('cuts a search into its words', () => {
  expect(searchWords('  Loft\tC1  ')).toEqual(['loft', 'c1'])
  expect(searchWords('')).toEqual([])
  // A number behind the name of a figure is that figure, whole.
  expect(searchWords('Gap 0 loft')).toEqual(['gap 0 ', 'loft'])
  expect(searchWords('peak 12 12')).toEqual(['peak 12 ', '12'])
  expect(searchWords('gap loft 0')).toEqual(['gap', 'loft', '0'])
})
