import { describe, expect, it } from 'vitest'
import { builtInFormat, readNumberFormat } from '#exchange/sheets/numberFormat.ts'

describe('the format of a number', () => {
  it.each([
    ['yyyy-mm-dd', 'date'],
    ['[$-407]d. mmmm', 'date'],
    ['mmm', 'date'],
    ['h:mm', 'time'],
    ['[h]:mm:ss', 'time'],
    ['0.00', 'number'],
    ['"day "0', 'number'],
    ['[Red]0.0', 'number'],
    ['0.00E+00', 'number'],
    ['General', 'number'],
  ])('%s shows a %s', (code, shows) => expect(readNumberFormat(code).shows).toBe(shows))

  it.each([
    ['0%', '%'],
    ['0.0" kN"', 'kN'],
    ['#,##0\\ \\l\\b\\f', 'lbf'],
    ['General" psi"', 'psi'],
    ['"about "0', ''],
    ['0;"below "0', ''],
    ['0_);(0)', ''],
  ])('%s writes "%s" behind it', (code, unit) => expect(readNumberFormat(code).unit).toBe(unit))

  it('of zeros alone fills up with zeros', () => {
    expect(['000', '0', '0.00', '#000'].map((code) => readNumberFormat(code).digits)).toEqual([3, 0, 0, 0])
  })

  it('may have nothing but a number of its own', () => {
    expect([9, 10].map((id) => builtInFormat(id).unit)).toEqual(['%', '%'])
    expect([14, 17, 22, 30, 57].map((id) => builtInFormat(id).shows)).toEqual(Array(5).fill('date'))
    expect([18, 21, 46].map((id) => builtInFormat(id).shows)).toEqual(Array(3).fill('time'))
    expect([0, 2, 11, 37, 49].map((id) => builtInFormat(id).shows)).toEqual(Array(5).fill('number'))
  })
})
