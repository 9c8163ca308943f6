import { describe, expect, it } from 'vitest'
import { UsageError } from '#shells/commands/command.ts'
import {
  lineFormatOption,
  nameOption,
  numberOption,
  refuseTwoScales,
  textOption,
  wordOption,
} from '#shells/commands/optionValues.ts'

describe('a number given for an option', () => {
  const number =
    (text: string, bounds = {}) =>
    () =>
      numberOption({ rate: text }, 'rate', bounds)

  it.each([
    ['80', 80],
    ['-0.5', -0.5],
    ['.25', 0.25],
    ['+1e3', 1000],
    ['7.', 7],
  ])('is read from "%s"', (text, value) => expect(number(text)()).toBe(value))
  it.each(['', ' ', '0x10', '1,234', '80 Hz', 'NaN', 'Infinity', '1e999', '--'])('is none in "%s"', (text) =>
    expect(number(text)).toThrow(UsageError),
  )
  it('lies within its bounds, the ends of which belong to "from" and "to" alone', () => {
    expect(number('0', { from: 0 })()).toBe(0)
    expect(number('0', { above: 0 })).toThrow('--rate must be a number above 0, but is "0".')
    expect(number('9', { to: 9 })()).toBe(9)
    expect(number('9', { below: 9 })).toThrow('below 9')
    expect(number('9', { from: 10 })).toThrow('from 10')
    expect(number('9', { to: 8 })).toThrow('up to 8')
    expect(number('0', { not: 0 })).toThrow('other than 0')
  })
  it('is whole where it must be, and no larger than is counted exactly', () => {
    expect(number('3', { whole: true })()).toBe(3)
    expect(number('3.5', { whole: true })).toThrow('a whole number')
    expect(number('9007199254740993', { whole: true })).toThrow('a whole number')
  })
  it('is read as every field of the page reads it, with its unit', () => {
    const capacity = (text: string) => numberOption({ capacity: text }, 'capacity', { above: 0, unit: 'N' })
    expect(capacity('25 kN')).toBe(25_000)
    // NIST SP 811: 1 lbf = 4.448 222 N.
    expect(capacity('12.5 lbf')).toBeCloseTo(55.602775, 5)
    expect(capacity('2,5')).toBe(2.5)
    expect(capacity('1 1/2 kN')).toBe(1500)
  })
  it('may be left out', () => expect(numberOption({}, 'rate')).toBeUndefined())
})

describe('a word given for an option', () => {
  it('is one of those there are', () => {
    expect(wordOption({ units: 'US' }, 'units', ['SI', 'US'])).toBe('US')
    expect(wordOption({}, 'units', ['SI', 'US'])).toBeUndefined()
    expect(() => wordOption({ units: 'us' }, 'units', ['SI', 'US'])).toThrow('one of SI, US, but is "us"')
  })
  it('is no empty text', () => {
    expect(textOption({ by: 'bench 1' }, 'by')).toBe('bench 1')
    expect(() => textOption({ by: '' }, 'by')).toThrow('--by must not be empty.')
  })
})

describe('a name given for an option', () => {
  it('is without the blanks around it', () => expect(nameOption({ by: ' Mara ' }, 'by')).toBe('Mara'))

  it('is no longer than a record takes, and not made of blanks', () => {
    for (const by of ['x'.repeat(201), '  ', 'half \ud800'])
      expect(() => nameOption({ by }, 'by')).toThrow('--by must be a name of up to 200 characters.')
  })
})

describe('the line format', () => {
  const columns = (given: Record<string, string>) => lineFormatOption({ 'line-format': 'columns', ...given })

  it('is the checked one unless another is named', () => {
    expect(lineFormatOption({})).toEqual({ name: 'checked', columns: [] })
    expect(lineFormatOption({ 'line-format': 'number' })).toEqual({ name: 'number', columns: [] })
    expect(() => lineFormatOption({ 'line-format': 'text' })).toThrow(UsageError)
  })
  it('has the columns of the documentation unless others are named', () => {
    expect(columns({})).toEqual({ name: 'columns', columns: ['time_us', 'counts'] })
    expect(columns({ columns: 'seq, force_N,-' }).columns).toEqual(['seq', 'force_N', '-'])
    expect(() => columns({ columns: 'newtons' })).toThrow('"newtons"')
  })
  it('has columns only where its lines are made of them', () => {
    expect(() => lineFormatOption({ 'line-format': 'number', columns: 'counts' })).toThrow('--line-format columns only')
  })
})

it('takes no calibration beside a typed scale, also the first one and a scale of 0', () => {
  expect(() => refuseTwoScales(0, 0)).toThrow(UsageError)
  expect(() => refuseTwoScales(1, undefined)).not.toThrow()
  expect(() => refuseTwoScales(null, 0.01)).not.toThrow()
})
