import { describe, expect, it } from 'vitest'
import { bare, cellNumber, type NumberUnit } from '#exchange/import/cellNumber.ts'
import type { NumberWriting } from '#exchange/import/decimalSign.ts'
import { type Cell, textCell } from '#exchange/sheets/sheet.ts'
import { cpuRatio } from '#tests/fakes/cpuRatio.ts'

const unsure: NumberWriting = { sign: null, lonePoint: false }
const load: NumberUnit = { to: 'N', column: 'lbf', known: ['N', 'kN', 'lbf', 'kgf'] }
const read = (text: string, unit: NumberUnit = { ...load, column: 'N' }, writing = unsure) =>
  cellNumber(textCell(text), unit, writing)
const numberOf = (read: ReturnType<typeof cellNumber>) => ('value' in read ? read.value : Number.NaN)
const numberCell = (number: number, unit = ''): Cell => ({ ...textCell(String(number)), kind: 'number', number, unit })

describe('a number in a cell of text', () => {
  it.each([
    ['3/4', 0.75],
    ['1 3/16', 1.1875],
    ['12,5', 12.5],
    ['1 234', 1234],
    ['1\u00a0234,5', 1234.5],
    ['1e+05', 100_000],
    ['  450  ', 450],
  ])('"%s" is %d', (text, value) => expect(read(text)).toEqual({ value }))

  it.each(['0x1F', 'Infinity', 'NaN', '1_000', '0b11', 'ten', '1/0', '--5', '12.5.1', '٣'])('"%s" is none', (text) =>
    expect(read(text)).toHaveProperty('fault'),
  )

  it('is not looked for in blanks without end', async () => {
    const cell = (count: number) => textCell(`${' '.repeat(count)}x`)
    // Looked for from each of them it takes a hundred times as long
    const ratio = await cpuRatio(
      2000,
      20_000,
      (count) => void cellNumber(cell(count), bare, { sign: '.', lonePoint: true }),
    )
    expect(ratio).toBeLessThan(40)
  })

  it('is refused where it could be two numbers, and read where the file shows which', () => {
    expect(read('12,345')).toEqual({
      fault: '“12,345” may be 12.345 or 12345; the mapping can say which sign parts the decimals',
    })
    expect(read('1.234')).toEqual({
      fault: '“1.234” may be 1.234 or 1234; the mapping can say which sign parts the decimals',
    })
    expect(read('12,345', undefined, { sign: ',', lonePoint: true })).toEqual({ value: 12.345 })
    expect(read('12,345', undefined, { sign: '.', lonePoint: true })).toEqual({ value: 12_345 })
    expect(read('1.234', undefined, { sign: null, lonePoint: true })).toEqual({ value: 1.234 })
    expect(read('12.5', undefined, { sign: ',', lonePoint: true })).toHaveProperty('fault')
  })
})

describe('the unit of a number', () => {
  it('is that of the column, unless one stands in the cell', () => {
    // 1 lbf = 4.4482216152605 N, exactly (NIST SP 811)
    expect(numberOf(read('100', load))).toBeCloseTo(444.82216152605, 10)
    expect(read('2 kN', load)).toEqual({ value: 2000 })
    expect(numberOf(read('10 kgf', load))).toBeCloseTo(98.0665, 10)
    expect(numberOf(read('100 lbs', { ...load, column: 'N' }))).toBeCloseTo(444.82216152605, 10)
    expect(cellNumber(numberCell(2, 'kN'), load, unsure)).toEqual({ value: 2000 })
  })

  it('spoils the cell where it is unknown, of another kind, or missing', () => {
    expect(read('12 stone', load)).toEqual({ fault: '“12 stone” has a unit that is none of N, kN, lbf, kgf' })
    expect(read('12 MPa', load)).toHaveProperty('fault')
    expect(cellNumber(numberCell(50, '%'), load, unsure)).toHaveProperty('fault')
    expect(read('12', { ...load, column: null })).toEqual({ fault: '“12” has no unit, and the mapping names none' })
    expect(read('12 mm', bare)).toEqual({ fault: '“12 mm” has a unit, and this field has none' })
  })

  it('is not needed for nothing', () => {
    expect(read('0', { to: 'mm', column: null, known: [] })).toEqual({ value: 0 })
  })
})

describe('a cell without a number', () => {
  it.each([
    ['date', '2024-04-03', 'holds a date (2024-04-03)'],
    ['time', '0.5', 'a time of day'],
    ['truth', 'TRUE', 'holds TRUE'],
    ['error', '#N/A', 'failed with #N/A'],
    ['unstored', '', 'no stored value'],
  ] as const)('says that it holds a %s', (kind, text, said) => {
    const read = cellNumber({ ...textCell(text), kind }, load, unsure)
    expect('fault' in read && read.fault).toContain(said)
  })
})
