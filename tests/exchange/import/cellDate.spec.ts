import { describe, expect, it } from 'vitest'
import { cellDate } from '#exchange/import/cellDate.ts'
import { textCell } from '#exchange/sheets/sheet.ts'
import { cpuRatio } from '#tests/fakes/cpuRatio.ts'

const read = (text: string, format: string | null) => cellDate(textCell(text), format)

describe('a day in a cell', () => {
  it.each([
    ['1.3.2020', 'D.M.YYYY', '2020-03-01'],
    ['01.03.2020', 'D.M.YYYY', '2020-03-01'],
    ['3/14/98', 'M/D/YY', '1998-03-14'],
    ['3/14/05', 'M/D/YY', '2005-03-14'],
    ['14 Mar 2019', 'D MMM YYYY', '2019-03-14'],
    ['March 14, 2019', 'MMM D, YYYY', '2019-03-14'],
    ['20190314', 'YYYYMMDD', '2019-03-14'],
    ['14032019', 'DDMMYYYY', '2019-03-14'],
    ['2019-03-14', 'YYYY-MM-DD', '2019-03-14'],
    ['14.3.2019 10:22', 'D.M.YYYY', '2019-03-14'],
    ['29.2.2020', 'D.M.YYYY', '2020-02-29'],
  ])('"%s" as %s is %s', (text, format, value) => expect(read(text, format)).toEqual({ value }))

  it('is refused where no calendar has it, and where it is written in another way', () => {
    expect(read('30.2.2020', 'D.M.YYYY')).toEqual({ fault: '“30.2.2020” is a day that does not exist' })
    expect(read('29.2.2019', 'D.M.YYYY')).toHaveProperty('fault')
    expect(read('2020-03-01', 'D.M.YYYY')).toEqual({ fault: '“2020-03-01” is not a date written as D.M.YYYY' })
    expect(read('1.3.20', 'D.M.YYYY')).toHaveProperty('fault')
  })

  it('is not looked for in blanks without end', async () => {
    const blanks = (count: number) => textCell(`1${' '.repeat(count)}x`)
    // Looked for from each of them it takes a hundred times as long
    expect(await cpuRatio(2000, 20_000, (count) => void cellDate(blanks(count), null))).toBeLessThan(40)
  })

  it('is taken without a format where it can be but one day', () => {
    expect(read('2019-03-14', null)).toEqual({ value: '2019-03-14' })
    expect(read('31.12.2020', null)).toEqual({ value: '2020-12-31' })
    expect(read('5/5/2020', null)).toEqual({ value: '2020-05-05' })
    expect(read('3.4.2020', null)).toEqual({
      fault: '“3.4.2020” may be more than one day; the mapping can say how dates are written',
    })
    expect(read('31.2.2020', null)).toHaveProperty('fault')
    expect(read('spring', null)).toHaveProperty('fault')
  })

  it('is that of a sheet program whatever the format, and no number without one', () => {
    const cell = (kind: 'date' | 'number', text: string) => ({ ...textCell(text), kind })
    expect(cellDate(cell('date', '2019-03-14'), 'D.M.YYYY')).toEqual({ value: '2019-03-14' })
    expect(cellDate(cell('number', '43831'), null)).toHaveProperty('fault')
    expect(cellDate(cell('number', '20190314'), 'YYYYMMDD')).toEqual({ value: '2019-03-14' })
  })
})
