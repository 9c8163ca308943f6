import { expect, it } from 'vitest'
import { unassessedWords, woodLimitWords, woodStrengthWords } from '#words/findings/woodStrengthWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { strength } = quantitiesIn('SI')
const block = (strengthMPa: number, woodFailurePercent: number | null) => ({ strengthMPa, woodFailurePercent })

it('counts both sorts of failure with their strengths, the limit a wood failure', () => {
  expect(woodStrengthWords([block(8, 75), block(9, 100), block(7, 70), block(6, null)], 75, strength)).toBe(
    '2 blocks failed in the wood (75 % or more), at 8.00 to 9.00\u00a0MPa. 1 block failed in the bond, at 7.00\u00a0MPa. ' +
      '1 block without an assessed wood failure is not drawn.',
  )
})

it('says it the other way on opposite data', () => {
  expect(woodStrengthWords([block(8, 0)], 75, strength)).toBe(
    'No block failed in the wood (75 % or more). 1 block failed in the bond, at 8.00\u00a0MPa.',
  )
  expect(unassessedWords(2)).toBe('2 blocks without an assessed wood failure are not drawn')
  expect(woodLimitWords(60)).toBe('wood failure from 60 % on')
})
