import { describe, expect, it } from 'vitest'
import { foundDecimalSign, withPoint } from '#exchange/import/decimalSign.ts'

describe('the sign before decimals', () => {
  it.each([
    [['12,5', '1.234'], ','],
    [['12.5', '1,234'], '.'],
    [['1.234,5'], ','],
    [['1,234.5 lbf'], '.'],
    [['0,123'], ','],
    [['1.234.567'], ','],
    [['1234,567'], ','],
    [['1 234,5'], ','],
    [['12,3456'], ','],
  ])('is shown by %j', (texts, sign) => expect(foundDecimalSign(texts)).toEqual({ sign, contradiction: false }))

  it('is shown neither by whole numbers, fractions and three digits behind it, nor by numbers that contradict one another', () => {
    expect(foundDecimalSign(['12', '3/4', '1 3/16', '1,234', '1.234', 'text'])).toEqual({
      sign: null,
      contradiction: false,
    })
    expect(foundDecimalSign(['12,5', '12.5'])).toEqual({ sign: null, contradiction: true })
  })

  it.each([
    ['1.234,5 kN', ',', '1234.5 kN'],
    ['1,234', ',', '1.234'],
    ['1.234', ',', '1234'],
    ['1,234', '.', '1234'],
    ['-1,234.5', '.', '-1234.5'],
    ['1 234,5', ',', '1234.5'],
    ['3/4', ',', '3/4'],
    ['1 3/16', '.', '1 3/16'],
    ['12.5', ',', null],
    ['12,5', '.', null],
    ['1,23,456', '.', null],
  ] as const)('of "%s" is "%s", which gives %s', (text, sign, plain) => expect(withPoint(text, sign)).toBe(plain))
})
