import { describe, expect, it } from 'vitest'
import { plainNumber } from '#contract/plainNumber.ts'
import { cpuRatio } from '#tests/fakes/cpuRatio.ts'

describe('a plain number', () => {
  it.each([
    ['12', 12],
    ['-0.5', -0.5],
    ['+.5', 0.5],
    ['12.', 12],
    ['-3e4', -30_000],
    ['1.5E-3', 0.0015],
    ['9007199254740991', Number.MAX_SAFE_INTEGER],
    ['-9007199254740991', -Number.MAX_SAFE_INTEGER],
  ])('is read from "%s"', (text, number) => {
    expect(plainNumber(text)).toBe(number)
  })

  it.each(['', ' 1', '1 ', '1,5', '0x10', 'Infinity', 'NaN', '.', '-', '1e', 'e5', '1.2.3', '--1', '1_000'])(
    'is not read from "%s"',
    (text) => {
      expect(plainNumber(text)).toBeNull()
    },
  )

  // 2^53 and 2^53 + 1 have one and the same double.
  it.each(['9007199254740992', '9007199254740993', '-9007199254740993', '9007199254740993.0', '1e16', '1e999'])(
    'is not read from %s, which would be rounded',
    (text) => {
      expect(plainNumber(text)).toBeNull()
    },
  )

  it('is read in a time that grows as the text does, also where its end shows that it is none', async () => {
    const texts = (digits: number) => [`${'7'.repeat(digits)}x`, `${'7'.repeat(digits)}.`, `.${'7'.repeat(digits)}e`]
    // 16 times as much; a square would be 256 times.
    expect(await cpuRatio(5000, 80_000, (digits) => void texts(digits).map(plainNumber))).toBeLessThan(80)
  })
})
