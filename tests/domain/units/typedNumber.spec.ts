import { describe, expect, it } from 'vitest'
import { readTypedNumber } from '#domain/units/typedNumber.ts'

const number = (value: number, unit = '') => ({ kind: 'number', value, unit })

describe('readTypedNumber', () => {
  it.each([
    ['12', number(12)],
    [' 0,25 ', number(0.25)],
    ['3,5', number(3.5)],
    ['.5', number(0.5)],
    ['5.', number(5)],
    ['-3', number(-3)],
    ['−3', number(-3)],
    ['1e-3', number(0.001)],
    ['1.234', number(1.234)],
    ['0,125', number(0.125)],
    ['1234,567', number(1234.567)],
    ['1,234.5', number(1234.5)],
    ['1.234,5', number(1234.5)],
    ['1,234,567', number(1_234_567)],
    ['12 345', number(12_345)],
    ['12\u2009345.5', number(12_345.5)],
  ])('reads the decimal %j', (text, read) => expect(readTypedNumber(text)).toEqual(read))

  it.each([
    ['3/4', number(0.75)],
    ['1 3/16', number(1.1875)],
    ['1-3/16', number(1.1875)],
    ['-1 1/2', number(-1.5)],
    ['¾', number(0.75)],
    ['1¾', number(1.75)],
    ['1 3/16 in', number(1.1875, 'in')],
    ['1 3/16"', number(1.1875, '"')],
  ])('reads the fraction %j', (text, read) => expect(readTypedNumber(text)).toEqual(read))

  it.each([
    ['25 kN', number(25, 'kN')],
    ['25kN', number(25, 'kN')],
    ['12.5 lbf', number(12.5, 'lbf')],
    ['68 °F', number(68, '°F')],
    ['1e3 N', number(1000, 'N')],
    ['2,5 N/mm²', number(2.5, 'N/mm²')],
  ])('reads %j with the unit behind it', (text, read) => expect(readTypedNumber(text)).toEqual(read))

  it.each([
    ['1,234', 1.234, 1234],
    ['-12,500 N', -12.5, -12_500],
  ])('does not guess what %j is', (text, asDecimal, asThousands) =>
    expect(readTypedNumber(text)).toEqual({ kind: 'ambiguous', asDecimal, asThousands }),
  )

  it.each(['ten', '1,2,3', '1.2.3', 'Infinity', '--3', '1/0', 'mm', '.', ',', '1e999', '9007199254740993'])(
    'takes %j for no number',
    (text) => expect(readTypedNumber(text)).toEqual({ kind: 'not-a-number' }),
  )

  it('tells nothing typed from no number', () => expect(readTypedNumber(' \u00a0')).toEqual({ kind: 'nothing' }))

  it('refuses a text that is far too long at once', () =>
    expect(readTypedNumber('1 '.repeat(500_000))).toEqual({ kind: 'not-a-number' }))
})
